import { afterAll, afterEach, beforeEach } from 'vitest';
import { beginTest, closePages, endTest } from './harness.ts';

// The files share one process, and so their modules: hooks for each test and file are registered here, not in a module.
beforeEach(beginTest);
afterEach(endTest);
afterAll(closePages);
