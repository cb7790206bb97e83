/** Returns days as hours in digits: "91 days" as "2184"; another text as it is. Instructions of long-term kits count in days. */
export function daysAsHours(text: string): string {
  const days = /^(\d+(?:[.,]\d+)?)\s*d(?:ays?)?$/i.exec(text.trim())?.[1];
  return days === undefined ? text : String(Number(days.replace(',', '.')) * 24);
}
