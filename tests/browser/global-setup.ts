import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Plugin, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { buildTo } from './build-site.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, with a slash at the end. */
    siteUrl: string;
    /** Address of a page without content, beside the app. */
    emptyUrl: string;
    /** The folder that contains the built app. */
    siteFolder: string;
  }
}

const EMPTY = 'empty-page';
const EMPTY_PAGE: Plugin = {
  name: EMPTY,
  configurePreviewServer: ({ middlewares }) => {
    middlewares.use(`/${EMPTY}`, (_, response) => {
      response
        .setHeader('Content-Type', 'text/html')
        .end('<!doctype html><html lang="en"><title>Empty</title><link rel="icon" href="data:,"></html>');
    });
  },
};

/** The file names contain a hash of their content. Asking before each use whether the files have changed would cost a third of a load. */
const ASSETS_KEPT: Plugin = {
  name: 'assets-kept',
  configurePreviewServer: ({ middlewares }) => {
    middlewares.use('/assets', (_, response, next) => {
      const writeHead = response.writeHead.bind(response);
      response.writeHead = (status: number, headers?: object | string) =>
        writeHead(status, {
          ...(typeof headers === 'object' && headers),
          'Cache-Control': 'max-age=31536000, immutable',
        });
      next();
    });
  },
};

/** Serves the built app for all test files. Returns a function that stops the server. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const given = process.env.STILLSPOT_SITE;
  const site = given ?? mkdtempSync(join(tmpdir(), 'stillspot-site-'));
  if (!given) buildTo(site);
  const server = await preview({
    configFile: false,
    logLevel: 'warn',
    build: { outDir: site },
    preview: { port: 0, host: 'localhost' },
    plugins: [EMPTY_PAGE, ASSETS_KEPT],
  });
  const url = server.resolvedUrls?.local[0];
  if (!url) throw new Error('The preview server gave no address.');
  project.provide('siteUrl', url);
  project.provide('emptyUrl', url + EMPTY);
  project.provide('siteFolder', site);
  return async () => {
    await server.close();
    if (!given) rmSync(site, { recursive: true, force: true });
  };
}
