import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sharedChromium } from './harness-browsers.ts';
import { layoutFaults } from './layout-faults.ts';

let page: Page;
beforeAll(async () => {
  page = await (await sharedChromium()).newPage({ viewport: { width: 360, height: 640 } });
});
afterAll(() => page.close());

const of = async (markup: string) => {
  await page.setContent(`<!doctype html><style>* { margin: 0; white-space: nowrap }</style>${markup}`);
  return layoutFaults(page);
};

test('a text that its box cuts off or lets stick out is clipped; one that scrolls, or is for the ear, is not', async () => {
  const box = (style: string) => `<p class="cut" style="width: 60px; ${style}">Harbourmaster Quintessa</p>`;
  for (const style of ['overflow: hidden; text-overflow: ellipsis', 'overflow: visible'])
    expect((await of(box(style))).clipped).toEqual(['p.cut: Harbourmaster Quintessa']);
  expect((await of(box('height: 8px; width: auto; overflow: hidden'))).clipped).toHaveLength(1);
  expect((await of(box('overflow-x: auto'))).clipped).toEqual([]);
  expect((await of(box('width: auto'))).clipped).toEqual([]);
  expect((await of(box('overflow: hidden').replace('cut', 'unseen'))).clipped).toEqual([]);
});

test('of boxes in each other the innermost is named', async () => {
  const { clipped } = await of('<div style="width: 60px"><div><p>Harbourmaster Quintessa</p></div></div>');
  expect(clipped).toEqual(['p: Harbourmaster Quintessa']);
});

test('what reaches over the edge of the screen is outside, unless it scrolls by itself', async () => {
  const wide = '<p style="width: 500px">Over the edge</p>';
  expect((await of(wide)).outside).toEqual(['the page, by 140 px', 'p: Over the edge']);
  expect((await of(`<div style="overflow-x: auto">${wide}</div>`)).outside).toEqual([]);
});

test('a button is small below 48 px of height, and a frequent one below 48 px of width', async () => {
  const button = (size: string) => `<button style="padding: 0; border: 0; ${size}">up</button>`;
  expect((await of(button('width: 48px; height: 40px'))).small).toEqual(['button is 48 x 40: up']);
  expect((await of(button('width: 40px; height: 48px'))).small).toEqual([]);
  expect((await of(`<nav>${button('width: 40px; height: 48px')}</nav>`)).small).toHaveLength(1);
});

test('only the sheet on top is looked at', async () => {
  const small = '<button style="height: 20px">';
  const { small: found } = await of(`${small}behind</button><dialog open>${small}in it</button></dialog>`);
  expect(found).toEqual([expect.stringContaining('in it')]);
});
