import type { Tone } from '../../geometry/messages/tone.ts';
import type { Theme } from '../theme/tokens.ts';
import type { ColorRole } from './display-list.ts';

type Plain = Exclude<keyof Theme, 'name' | 'verdict' | 'weight' | 'photo'>;

/** Roles that have no color of their own. The sheet about the drawing is of the same card as the panels, and so is floor that is taken. */
const COLOR_OF: Readonly<Partial<Record<ColorRole, Plain>>> = {
  ground: 'card',
  sheet: 'card',
  object: 'edge',
  objectFill: 'well',
  fixtureFill: 'well',
};

/** Returns the CSS color of a role in a theme. */
export function roleColor(theme: Theme, role: ColorRole): string {
  if (role in theme.verdict) return theme.verdict[role as Tone].line;
  return theme[COLOR_OF[role] ?? (role as Plain)];
}
