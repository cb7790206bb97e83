/** What the page's URL says is open: reload, Back and a second tab depend on it. */
export type Address = { readonly shows: 'plan'; readonly id: string } | { readonly shows: 'new' | 'plans' | 'nothing' };

export function readAddress(hash: string = window.location.hash): Address {
  const id = /^#plan=([a-z0-9-]{1,60})$/.exec(hash)?.[1];
  if (id) return { shows: 'plan', id };
  if (hash === '#new') return { shows: 'new' };
  return hash === '#plans' ? { shows: 'plans' } : { shows: 'nothing' };
}

/** Sets the hash of the page's URL. `push` adds a step that the browser's Back undoes; `from` is the id of the plan that Back leads to. */
export function showAddress(address: Address, how: 'push' | 'replace', from?: string): void {
  const hash = hashOf(address);
  if (hash === window.location.hash) return;
  const target = hash || window.location.pathname + window.location.search;
  const state = { from };
  try {
    if (how === 'push') window.history.pushState(state, '', target);
    else window.history.replaceState(state, '', target);
  } catch {
    // Not allowed for a page that is opened from a file; the plan is still stored.
  }
}

function hashOf(address: Address): string {
  switch (address.shows) {
    case 'plan':
      return `#plan=${address.id}`;
    case 'nothing':
      return '';
    default:
      return `#${address.shows}`;
  }
}
