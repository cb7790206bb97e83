import { THEMES } from '../../theme/tokens.ts';

/** The W3C Web Application Manifest. */
export const APP_MANIFEST = {
  id: './',
  name: 'Stillspot: where a radon detector may be placed',
  short_name: 'Stillspot',
  description: 'Checks where a radon detector may be placed on a floor plan, why not, and how far to move it.',
  lang: 'en',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: THEMES.paper.desk,
  theme_color: THEMES.paper.desk,
  categories: ['utilities', 'productivity'],
  icons: [
    { src: './icon.svg', sizes: 'any', type: 'image/svg+xml' },
    { src: './icon-192.png', sizes: '192x192', type: 'image/png' },
    { src: './icon-512.png', sizes: '512x512', type: 'image/png' },
    { src: './icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  file_handlers: [{ action: './', accept: { 'application/json': ['.json'] } }],
} as const;
