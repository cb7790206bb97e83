/** Digits of 6 bits: 5 bits of the number, and one that says whether more digits follow. */
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Returns whole numbers as a text: each is written as its difference from the previous one, in most cases one or two digits. */
export function textOfNumbers(numbers: readonly number[]): string {
  let text = '';
  let last = 0;
  for (const number of numbers) {
    const difference = number - last;
    last = number;
    // The lowest bit holds the sign.
    let rest = difference < 0 ? -2 * difference - 1 : 2 * difference;
    do {
      text += DIGITS[(rest & 31) | (rest > 31 ? 32 : 0)];
      rest >>= 5;
    } while (rest > 0);
  }
  return text;
}

/** Returns the numbers of a text that `textOfNumbers` made. */
export function numbersOfText(text: string): number[] {
  const values = new Uint8Array(128);
  for (let value = 0; value < DIGITS.length; value++) values[DIGITS.charCodeAt(value)] = value;
  const numbers: number[] = [];
  let [last, rest, shift] = [0, 0, 0];
  for (let i = 0; i < text.length; i++) {
    const value = values[text.charCodeAt(i)] ?? 0;
    rest |= (value & 31) << shift;
    shift += 5;
    if (value > 31) continue;
    last += rest & 1 ? -(rest + 1) / 2 : rest / 2;
    numbers.push(last);
    [rest, shift] = [0, 0];
  }
  return numbers;
}
