/** A figure and its unit on one line of a narrow column. */
export const tied = (text: string): string => text.replaceAll(/(\d) (?=%|pCi\/L|Bq)/g, '$1\u00a0');
