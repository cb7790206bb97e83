/** Converts days to hours in digits: "91 days" to "2184"; returns other text unchanged. Instructions of long-term kits count in days. */
export function daysAsHours(text: string): string {
  const days = /^(\d+(?:[.,]\d+)?)\s*d(?:ays?)?$/i.exec(text.trim())?.[1];
  return days === undefined ? text : String(Number(days.replace(',', '.')) * 24);
}
