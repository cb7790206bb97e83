import { vi } from 'vitest';

// The test files of a project without isolation share a process; this resets the state of modules and the stubs of globals for each.
vi.resetModules();
vi.unstubAllGlobals();
vi.useRealTimers();
for (const name of Object.getOwnPropertyNames(globalThis))
  if (/^(?:IDB|indexedDB)/.test(name)) Reflect.deleteProperty(globalThis, name); // of fake-indexeddb
