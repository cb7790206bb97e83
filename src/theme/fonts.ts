import { FIGURE_FONT, TEXT_FONT } from './font-names.ts';
import './fonts.css';

/**
 * Resolves when both families are loaded; rejects when a font fails to load. A canvas does not wait for fonts: await this before the first
 * draw and before every export.
 */
export async function fontsReady(): Promise<void> {
  const sample = 'Aa 0123456789 ft in';
  await Promise.all([
    document.fonts.load(`400 16px "${TEXT_FONT}"`, sample),
    document.fonts.load(`700 16px "${TEXT_FONT}"`, sample),
    document.fonts.load(`400 16px "${FIGURE_FONT}"`, sample),
  ]);
}
