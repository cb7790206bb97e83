import { vi } from 'vitest';

// The files of a project without isolation share a process, but neither what modules hold nor what a file put in the place of a global.
vi.resetModules();
vi.unstubAllGlobals();
vi.useRealTimers();
for (const name of Object.getOwnPropertyNames(globalThis))
  if (/^(?:IDB|indexedDB)/.test(name)) Reflect.deleteProperty(globalThis, name); // of fake-indexeddb
