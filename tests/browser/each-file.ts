import { afterAll, afterEach, beforeEach } from 'vitest';
import { beginTest, closePages, endTest } from './harness.ts';

// The files share one process, and with it the modules: what is to happen after each test and file is said here, not in a module.
beforeEach(beginTest);
afterEach(endTest);
afterAll(closePages);
