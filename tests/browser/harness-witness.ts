import { createServer } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';
import type { BrowserContext, Page } from 'playwright-core';

/** Collects whatever must never happen while the app runs, in any window or worker. */
export interface Witness {
  /** Every address asked for, in order. */
  readonly requests: readonly string[];
  /** What went wrong, in words; empty when all is well. */
  readonly faults: readonly string[];
  readonly watch: (context: BrowserContext) => void;
  readonly watchPage: (page: Page) => void;
  /** Notes a fault the harness saw itself. */
  readonly report: (fault: string) => void;
  /** Takes out, and returns, the faults that a test provoked on purpose. */
  readonly forgive: (pattern: RegExp) => readonly string[];
}

export function createWitness(origin: string): Witness {
  const requests: string[] = [];
  const faults: string[] = [];
  const report = (fault: string): void => {
    faults.push(fault);
  };
  const watchPage = (page: Page): void => {
    // Chromium puts a broken content security policy on the console too, as an error.
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') {
        report(`console ${message.type()}: ${message.text()} (${message.location().url})`);
      }
    });
    page.on('pageerror', (error) => report(`page error: ${error.stack ?? error.message}`));
    page.on('crash', () => report('page crashed'));
  };
  const watch = (context: BrowserContext): void => {
    context.on('request', (request) => {
      requests.push(request.url());
      if (isForeign(request.url(), origin)) report(`foreign request: ${request.url()}`);
    });
    context.on('page', watchPage);
    for (const page of context.pages()) watchPage(page);
  };
  const forgive = (pattern: RegExp): readonly string[] => {
    const forgiven = faults.filter((fault) => pattern.test(fault));
    const kept = faults.filter((fault) => !pattern.test(fault));
    faults.splice(0, faults.length, ...kept);
    return forgiven;
  };
  return { requests, faults, watch, watchPage, report, forgive };
}

const isForeign = (url: string, origin: string): boolean =>
  /^(https?|wss?):/.test(url) && new URL(url).origin.replace(/^ws/, 'http') !== origin;

// What browsers ask for on their own account. If the app asked for these, `watch` would still see it.
const BROWSERS_OWN = /(^|\.)(google|googleapis|gvt1|gstatic|microsoft|msn|bing|msedge)\.(com|net)$/;

/** A proxy that lets nothing through and reports who was asked for: it also sees what workers ask. */
export interface Trap {
  readonly port: number;
  readonly close: () => Promise<void>;
}

export async function startTrap(report: (fault: string) => void): Promise<Trap> {
  const sockets = new Set<Socket>();
  const reportUnlessOwn = (url: string): void => {
    if (!BROWSERS_OWN.test(new URL(url).hostname)) report(`foreign request: ${url}`);
  };
  const server = createServer((request, response) => {
    reportUnlessOwn(request.url!);
    response.writeHead(502).end();
  });
  server.on('connect', (request, socket) => {
    reportUnlessOwn(`https://${request.url}`);
    socket.end('HTTP/1.1 502 Bad Gateway\r\n\r\n');
  });
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
    // A browser that is closed resets what it had open; that is its end, not a fault.
    socket.on('error', () => sockets.delete(socket));
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const close = async (): Promise<void> => {
    for (const socket of sockets) socket.destroy();
    await new Promise((done) => server.close(done));
  };
  return { port: (server.address() as AddressInfo).port, close };
}
