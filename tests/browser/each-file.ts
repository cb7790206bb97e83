import { afterAll } from 'vitest';
import { closePages } from './harness.ts';

// The files share one process, and with it the modules: what is to happen after each file is said here, not in a module.
afterAll(closePages);
