import { describe, expect, it } from 'vitest';
import { systemTheme } from '../../../src/theme/theme.ts';

describe('the theme of a first visit', () => {
  it.each([
    [[], 'paper'],
    [['(prefers-color-scheme: dark)'], 'dark'],
    [['(prefers-contrast: more)'], 'sun'],
    [['(prefers-contrast: more)', '(prefers-color-scheme: dark)'], 'sun'],
    [['(forced-colors: active)'], 'sun'],
    [['(forced-colors: active)', '(prefers-color-scheme: dark)'], 'dark'],
  ])('where the system asks for %j is %s', (asked, theme) => {
    expect(systemTheme((query) => (asked as readonly string[]).includes(query))).toBe(theme);
  });
});
