import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, type PluginOption } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** A general-purpose spreadsheet for the browser, and the view library it asks for, as npm installs them. */
const PACKAGES = ['@fortune-sheet/react@1.0.4', 'react@19.3.1', 'react-dom@19.3.1'];
export const SPREADSHEET = '@fortune-sheet/react 1.0.4';

const PAGE = `<!doctype html><html><head><title>Sheet</title><link rel="icon" href="data:,"></head>
<body><div id="app" style="height:800px"></div><script type="module" src="/main.js"></script></body></html>`;

let built: Promise<string> | undefined;

/** The folder of a built page with the spreadsheet in it and nothing else; installed outside the project, once a run. */
export const spreadsheetPage = (): Promise<string> => {
  built ??= make();
  return built;
};

async function make(): Promise<string> {
  const root = mkdtempSync(join(tmpdir(), 'rollbook-sheet-'));
  writeFileSync(join(root, 'package.json'), '{"private":true,"type":"module"}');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const args = ['install', '--ignore-scripts', '--no-audit', '--no-fund', '--silent', ...PACKAGES];
  const { status } = spawnSync(npm, args, { cwd: root, stdio: 'inherit' });
  if (status !== 0)
    throw new Error(`npm could not install ${PACKAGES.join(', ')}: the bench needs a network`);
  copyFileSync(resolve(import.meta.dirname, 'pages/spreadsheet.js'), join(root, 'main.js'));
  writeFileSync(join(root, 'index.html'), PAGE);
  return buildPage(root, keptByWorker());
}

/** The worker that keeps a page for no signal, as the tool writes it. */
const keptByWorker = (): PluginOption =>
  VitePWA({
    strategies: 'generateSW',
    injectRegister: false,
    manifest: false,
    workbox: {
      globPatterns: ['**/*.{js,css,html}'],
      maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
      clientsClaim: true,
      navigateFallback: 'index.html',
    },
  });

/** Builds a folder with an index.html for production, as the app is built; gives the folder to serve. */
export async function buildPage(root: string, plugins: PluginOption = []): Promise<string> {
  const outDir = join(root, 'dist');
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    plugins: [plugins],
    mode: 'production',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: { outDir, emptyOutDir: true, target: 'es2023', chunkSizeWarningLimit: 5000 },
  });
  return outDir;
}
