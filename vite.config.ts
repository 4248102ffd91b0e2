import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { listKeptFiles } from './.ci/kept-files.mjs';
import { licenceList, packagesOf } from './.ci/licences.mjs';

/** What the PDF writer would load for pages of HTML, which nobody makes here. */
const leftOut = fileURLToPath(new URL('src/report/pdf/left-out.ts', import.meta.url));

/** The page asks nothing of any other host; the built page says so to the browser. */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Modules of the workers, which are bundled apart and before the rest. */
const inWorkers = new Set<string>();

/** After the worker is written, which is done when everything else is. */
function listsKeptFiles(): Plugin {
  let folder = '';
  return {
    name: 'list-kept-files',
    apply: 'build',
    configResolved: ({ root, build }) => {
      folder = resolve(root, build.outDir);
    },
    closeBundle: { sequential: true, order: 'post', handler: () => listKeptFiles(folder) },
  };
}

export default defineConfig({
  base: '/',
  resolve: { alias: { html2canvas: leftOut, canvg: leftOut, dompurify: leftOut } },
  publicDir: 'icons',
  build: {
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: false,
    // What the first load needs comes in one file: less to ask for, and it packs better than a file for every shared part.
    rolldownOptions: {
      checks: { bundlerTimings: false },
      output: { codeSplitting: { groups: [{ name: 'given', test: /src\/main\.tsx$/ }] } },
    },
  },
  worker: {
    plugins: () => [
      {
        name: 'note-modules-of-workers',
        moduleParsed: ({ id }) => void inWorkers.add(id),
      },
    ],
  },
  plugins: [
    {
      name: 'content-security-policy',
      apply: 'build',
      transformIndexHtml: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY_POLICY },
          injectTo: 'head-prepend',
        },
      ],
    },
    {
      // Says for the size test which packages each file of the build was made of (hidden, so never served), and
      // gathers their licences.
      name: 'list-packages',
      apply: 'build',
      generateBundle(_, bundle) {
        const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
        const packages = Object.fromEntries([
          ...chunks.map((chunk) => [chunk.fileName, packagesOf(chunk.moduleIds)]),
          ['workers', packagesOf([...inWorkers])],
        ]);
        this.emitFile({ type: 'asset', fileName: '.packages.json', source: JSON.stringify(packages) });
        const licences = licenceList([...chunks.flatMap((chunk) => chunk.moduleIds), ...inWorkers]);
        this.emitFile({ type: 'asset', fileName: 'licences.txt', source: licences });
      },
    },
    VitePWA({
      strategies: 'generateSW',
      registerType: 'prompt',
      injectRegister: false,
      filename: 'sw.js',
      devOptions: { enabled: false },
      includeManifestIcons: false,
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,ttf,txt,json}'],
        maximumFileSizeToCacheInBytes: 4 * 1024 * 1024,
        clientsClaim: true,
        skipWaiting: false,
        cleanupOutdatedCaches: true,
        navigateFallback: 'index.html',
        importScripts: ['/share-target.js', '/kept-files.js'],
      },
      manifest: {
        id: '/',
        name: 'Rollbook',
        short_name: 'Rollbook',
        description: 'Who is on which track, every take, with no signal.',
        start_url: '/',
        scope: '/',
        display: 'standalone',
        orientation: 'any',
        background_color: '#000000',
        theme_color: '#000000',
        // No drawing that scales: at every start Chromium unpacks the best of them, and a document for a drawing takes a
        // slow phone four times as long as a picture.
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
        shortcuts: [
          {
            name: 'Roll',
            short_name: 'Roll',
            url: '/#/roll',
            description: 'The newest day, with Roll at hand',
          },
          { name: 'Inputs', short_name: 'Inputs', url: '/#/inputs', description: 'What is free now' },
          {
            name: 'Report',
            short_name: 'Report',
            url: '/#/report',
            description: 'Check and send the report',
          },
        ],
        share_target: {
          action: '/take-in',
          method: 'POST',
          enctype: 'multipart/form-data',
          params: {
            text: 'text',
            files: [{ name: 'files', accept: ['text/plain', '.txt', 'audio/wav', 'audio/x-wav', '.wav'] }],
          },
        },
        file_handlers: [{ action: '/', accept: { 'text/plain': ['.txt'], 'audio/wav': ['.wav'] } }],
        launch_handler: { client_mode: ['focus-existing', 'auto'] },
      },
    }),
    listsKeptFiles(),
  ],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/engines/**'],
          // Many cores or few: what is measured is measured in the bench, not by a time limit here.
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts', 'tests/engines/**/*.test.ts'],
          globalSetup: ['tests/browser/harness-setup.ts'],
          // Most of them wait for the browser more than they work.
          maxWorkers: 3,
          sequence: { groupOrder: 1 },
          testTimeout: 240_000,
          hookTimeout: 120_000,
          expect: { poll: { timeout: 15_000 } },
        },
      },
    ],
  },
});
