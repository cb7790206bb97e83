import { describe, expect, it } from 'vitest';
import { forTerminal, oneLine, severalLines } from '../../../geometry/messages/plain-text.ts';

const HOSTILE = 'a\u0000b\u001b[31mc\u009bd\ud800e\ufffe\tf\r\ng\u2028h';

describe('plain text', () => {
  it('oneLine(text) has no line end, no control character and nothing that XML bars', () => {
    expect(oneLine(HOSTILE)).toBe('ab[31mcde f g h');
  });

  it('severalLines(text) keeps line ends alone', () => {
    expect(severalLines(HOSTILE)).toBe('ab[31mcde f\ng\nh');
  });

  it('forTerminal(text) has no mark that reverses what follows', () => {
    expect(forTerminal('clear\u202edekcolb\u2066')).toBe('cleardekcolb');
  });

  it('leaves letters of every script and pictures alone', () => {
    for (const text of ['Räume № 3 – “yes”', '地下室', '\u{1f3e0} house', 'غرفة']) {
      expect([oneLine(text), severalLines(text), forTerminal(text)]).toEqual([text, text, text]);
    }
  });
});
