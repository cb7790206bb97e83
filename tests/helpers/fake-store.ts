import * as fake from 'fake-indexeddb';

// Not `fake-indexeddb/auto`: a package is read once in a process, and the files of a project share one.
for (const [name, value] of Object.entries(fake))
  if (name.startsWith('IDB')) Object.assign(globalThis, { [name]: value });
globalThis.indexedDB = new fake.IDBFactory();
