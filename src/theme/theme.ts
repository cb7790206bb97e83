import { tokenStyles } from './token-styles.ts';
import { THEMES, type ThemeName } from './tokens.ts';

/** Applies a theme to the page. Idempotent: the style element is created once. */
export function applyTheme(name: ThemeName, root: HTMLElement = document.documentElement): void {
  if (!document.getElementById('tokens')) {
    const style = document.createElement('style');
    style.id = 'tokens';
    style.textContent = tokenStyles();
    document.head.prepend(style);
  }
  root.dataset.theme = name;
  // The browser colors its window frame with it.
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', THEMES[name].desk);
  root.style.colorScheme = name === 'dark' ? 'dark' : 'light';
}

/** Returns the theme for the system settings: "sun" for more contrast, and for forced colors on a light background. */
export function systemTheme(asks: (query: string) => boolean = (query) => window.matchMedia(query).matches): ThemeName {
  const dark = asks('(prefers-color-scheme: dark)');
  if (asks('(forced-colors: active)')) return dark ? 'dark' : 'sun';
  if (asks('(prefers-contrast: more)')) return 'sun';
  return dark ? 'dark' : 'paper';
}
