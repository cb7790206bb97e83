import { SHEET_KEYS } from '../canvas/key-list.ts';
import { ACTS } from './menu/table.ts';
import { PAGE_KEYS } from './page-keys.ts';

const PALETTE_KEYS = [
  { keys: '1 to 8', does: 'Open a question of the walk; then a second digit takes that answer in hand' },
] as const;

const ACT_KEYS = ACTS.flatMap(({ key, name, does }) =>
  key ? [{ keys: key.shown, does: does ?? (typeof name === 'string' ? name : '') }] : [],
);

/** Every key, in the words of what it does. */
export function KeyTable() {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="problems" aria-label="Keys" tabIndex={0}>
      <table className="keys">
        <tbody>
          {[...PALETTE_KEYS, ...SHEET_KEYS, ...ACT_KEYS, ...PAGE_KEYS].map(({ keys, does }) => (
            <tr key={`${keys} ${does}`}>
              <th scope="row">
                <kbd className="key">{keys}</kbd>
              </th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
