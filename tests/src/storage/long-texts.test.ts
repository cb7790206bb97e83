import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSplitText, joinText, splitText, textHash } from '../../../src/storage/long-texts.ts';

const picture = (sign: string, length = 6000) => `data:image/png;base64,${sign.repeat(length)}`;
const planWith = (...addresses: string[]) =>
  JSON.stringify({ title: 'A house', levels: addresses.map((image) => ({ tracing: { image, name: 'sketch.png' } })) });

describe('long texts', () => {
  it('are taken out of a plan, each once, and put back to the letter', () => {
    const text = planWith(picture('A'), picture('B'), picture('A'));
    const split = splitText(text);
    expect(split.longTexts.size).toBe(2);
    expect(split.text.long).toHaveLength(3);
    expect(split.text.pieces.join('').length).toBeLessThan(400);
    expect(joinText(split.text, split.longTexts)).toBe(text);
    expect(isSplitText(split.text)).toBe(true);
  });

  it('of the same picture have one name in every version of a plan', () => {
    const [before, after] = [planWith(picture('A')), planWith(picture('A')).replace('A house', 'Another house')];
    expect(splitText(before).text.long).toEqual(splitText(after).text.long);
  });

  it.each([
    ['a short address', `{"image":"${picture('A', 100)}"}`],
    ['a long text that is no address', `{"note":"${'word '.repeat(4000)}"}`],
    ['no text at all', ''],
  ])('are not made of %s', (_, text) => {
    const split = splitText(text);
    expect(split.longTexts.size).toBe(0);
    expect(split.text).toEqual({ pieces: [text], long: [] });
  });

  it('are missed rather than left out: a text that lacks one is not put together', () => {
    const { text } = splitText(planWith(picture('A')));
    expect(joinText(text, new Map())).toBeNull();
  });

  it('put together what any text of a plan was split into', () => {
    const signs = fc.constantFrom('A', 'B', '"', '\\', 'data:', ',', ' ', '\n', picture('C'), `"${picture('D')}"`);
    fc.assert(
      fc.property(fc.array(signs, { maxLength: 12 }), (parts) => {
        const text = parts.join('');
        const split = splitText(text);
        expect(joinText(split.text, split.longTexts)).toBe(text);
      }),
    );
  });
});

describe('textHash(text)', () => {
  it('differs when one sign differs, wherever it stands', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 200 }), fc.nat(), (text, at) => {
        const place = at % text.length;
        const other = `${text.slice(0, place)}${String.fromCharCode(text.charCodeAt(place) ^ 1)}${text.slice(place + 1)}`;
        expect(textHash(other)).not.toBe(textHash(text));
      }),
    );
  });
});
