import * as fake from 'fake-indexeddb';

// Not `fake-indexeddb/auto`: a package is evaluated once in a process, which the test files of a project share.
for (const [name, value] of Object.entries(fake))
  if (name.startsWith('IDB')) Object.assign(globalThis, { [name]: value });
globalThis.indexedDB = new fake.IDBFactory();
