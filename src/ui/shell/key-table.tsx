import { PAGE_KEYS } from '../../commands/page-keys.ts';
import { ACTS } from '../../commands/table.ts';
import { SHEET_KEYS } from '../../editor/key-list.ts';
import { useLetterKeys } from '../../state/letter-keys.ts';
import { writeSetting } from '../../storage/settings.ts';

const PALETTE_KEYS = [
  {
    keys: '1 to 9',
    does: 'Open a question of the walk; then a second digit takes that answer in hand, X leads to "none here"',
  },
] as const;

const ACT_KEYS = ACTS.flatMap(({ key, name, does }) =>
  key ? [{ keys: key.shown, does: does ?? (typeof name === 'string' ? name : '') }] : [],
);

/** Every key, in the words of what it does. */
export function KeyTable() {
  const anywhere = useLetterKeys((keys) => keys.anywhere);
  const setAnywhere = (on: boolean) => {
    useLetterKeys.setState({ anywhere: on });
    void writeSetting('letterKeys', on);
  };
  return (
    <>
      <label className="tick">
        <input type="checkbox" checked={anywhere} onChange={(event) => setAnywhere(event.currentTarget.checked)} />
        Letters and digits are keys anywhere on the page; without the tick only on the sheet
      </label>
      <Table />
    </>
  );
}

function Table() {
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
