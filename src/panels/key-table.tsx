/** Every key, in the words of what it does. */
export function KeyTable() {
  return (
    <table className="keys">
      <tbody>
        {PAGE_KEYS.map(({ keys, does }) => (
          <tr key={keys}>
            <th scope="row">
              <kbd className="key">{keys}</kbd>
            </th>
            <td>{does}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const PAGE_KEYS = [
  { keys: '1 … 8', does: 'Open a question of the walk; a second digit takes the answer in hand' },
  { keys: '?', does: 'This list' },
] as const;
