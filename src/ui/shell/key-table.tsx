import { keyRows } from '../../commands/table.ts';
import { useAppStore } from '../../state/store.ts';
import { writeSetting } from '../../storage/settings.ts';
import { TermList } from './term-list.tsx';
import './key-table.css';

/** All keys with what they do, read from the table of commands; and the terms of the app. */
export function KeyTable() {
  const anywhere = useAppStore(({ letterKeysAnywhere }) => letterKeysAnywhere);
  const setAnywhere = (on: boolean) => {
    useAppStore.getState().setLetterKeysAnywhere(on);
    void writeSetting('letterKeys', on);
  };
  return (
    <>
      <label className="tick">
        <input type="checkbox" checked={anywhere} onChange={(event) => setAnywhere(event.currentTarget.checked)} />
        Letters and digits are keys anywhere on the page; when cleared, only on the plan
      </label>
      <Table />
      <TermList />
    </>
  );
}

function Table() {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="problems" aria-label="Keys" tabIndex={0}>
      <table className="keys" aria-label="Keys and what they do">
        <tbody>
          {keyRows().map(({ keys, does }) => (
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
