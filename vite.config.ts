import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { withChecks } from './.ci/kept-list.mjs';
import { licenceList, OF_THE_WORKER, packagesOf } from './.ci/licences.mjs';
import { aloneTests } from './.ci/unit-tests.mjs';

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

/** Many cores or few: what is measured is measured in the bench, not by a time limit here. */
const UNIT_TIMEOUT_MS = 60_000;
// Left to itself, vitest leaves one core idle. Beside the browsers they get one (.ci/test.mjs).
const unitWorkers = process.env.UNIT_WORKERS ? Number(process.env.UNIT_WORKERS) : '100%';
const alone = aloneTests(fileURLToPath(new URL('.', import.meta.url)));

/** Modules of the workers, which are bundled apart and before the rest. */
const inWorkers = new Set<string>();

/** The worker is bundled when the list of licences is already among the files it keeps. */
const onlyListedPackages: Plugin = {
  name: 'only-listed-packages',
  moduleParsed: ({ id }) => {
    const unknown = packagesOf([id]).filter((name) => !OF_THE_WORKER.includes(name));
    if (unknown.length > 0) throw new Error(`Not in the list of licences: ${unknown}`);
  },
};

/** Time what a hand waits for, so they run when the other browsers are done. */
const TIMED = ['tests/browser/six-phones.test.ts'];

const inBrowsers = {
  globalSetup: ['tests/browser/harness-setup.ts'],
  // The files that a process runs share its browser and its server.
  isolate: false,
  // Most of them wait for the browser more than they work.
  maxWorkers: 4,
  testTimeout: 240_000,
  hookTimeout: 120_000,
  expect: { poll: { timeout: 15_000 } },
};

export default defineConfig({
  base: '/',
  resolve: {
    alias: {
      ...{ html2canvas: leftOut, canvg: leftOut, dompurify: leftOut },
      // The package's own build for browsers with classes and promises of their own; by itself the one for ES5 is taken.
      'workbox-window': 'workbox-window/build/workbox-window.prod.mjs',
    },
  },
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
      strategies: 'injectManifest',
      registerType: 'prompt',
      injectRegister: false,
      srcDir: 'src/offline/worker',
      // Becomes `sw.js`, a name that must never change (src/offline/registration.ts).
      filename: 'sw.ts',
      devOptions: { enabled: false },
      includeManifestIcons: false,
      injectManifest: {
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,ttf,txt,json,webmanifest}'],
        maximumFileSizeToCacheInBytes: 4 * 1024 * 1024,
        rollupFormat: 'iife',
        buildPlugins: { vite: [onlyListedPackages] },
      },
      integration: {
        configureCustomSWViteBuild: (options) => {
          options.logLevel = 'warn';
        },
        beforeBuildServiceWorker: ({ injectManifest: options }) => {
          // The app's manifest is found among the files, and gets its check as they do.
          options.additionalManifestEntries = [];
          options.manifestTransforms = [(files) => ({ manifest: withChecks(options.globDirectory, files) })];
        },
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
  ],
  test: {
    // A build has no use for it, and would wait for all of the test runner.
    ...(process.env.VITEST && {
      sequence: { sequencer: (await import('./.ci/longest-first.mjs')).LongestFirst },
    }),
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/engines/**', ...alone],
          // A process loads the modules once for all the files that it runs.
          isolate: false,
          maxWorkers: unitWorkers,
          testTimeout: UNIT_TIMEOUT_MS,
        },
      },
      {
        extends: true,
        test: {
          name: 'unit-alone',
          include: alone,
          maxWorkers: unitWorkers,
          testTimeout: UNIT_TIMEOUT_MS,
        },
      },
      {
        extends: true,
        test: {
          ...inBrowsers,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts', 'tests/engines/**/*.test.ts'],
          exclude: TIMED,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          ...inBrowsers,
          name: 'browser-timed',
          include: TIMED,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
