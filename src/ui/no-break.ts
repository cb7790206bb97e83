const SPACE_IN_LENGTH = /(?<=\d|\d (?:ft|m)) (?=\d|ft\b|in\b|m\b|cm\b|mm\b)/g;

/** A sentence whose lengths stay on one line: "1 ft 10 1/2 in" is one figure. */
export function unbroken(text: string): string {
  return text.replace(SPACE_IN_LENGTH, '\u00a0');
}

/** The text with each figure and its unit of a result on one line of a narrow column. */
export const unbrokenResult = (text: string): string => text.replaceAll(/(\d) (?=%|pCi\/L|Bq)/g, '$1\u00a0');
