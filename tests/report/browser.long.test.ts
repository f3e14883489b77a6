import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { renderAudit } from '../../src/report/render.ts';
import { audited, brokenBuild, thirdOf } from '../support/audited.ts';
import { openBrowser } from '../support/browser.ts';
import { demoSheets } from '../support/demo.ts';
import { temporaryFolder } from '../support/folder.ts';

/** The sheets of the demo, and one with a few things wrong. */
const printed = [...demoSheets(), ['with a few things wrong', brokenBuild()] as const];

// Letter paper is 215.9 by 279.4 mm, a px of CSS 1/96 in; the page's own margins are 12 mm.
const letter = { width: Math.floor(((215.9 - 24) / 25.4) * 96), height: Math.floor(((279.4 - 24) / 25.4) * 96) };

test.each(printed)(
	'%s: on paper page one is one page, in ink on white, without tools',
	async (_, sheet) => {
		const path = join(temporaryFolder(), 'audit.html');
		writeFileSync(path, renderAudit(audited(sheet), 'html', '').text);
		const page = await openBrowser();
		try {
			await page.send('Emulation.setEmulatedMedia', {
				media: 'print',
				features: [{ name: 'prefers-color-scheme', value: 'dark' }],
			});
			await page.send('Emulation.setDeviceMetricsOverride', { ...letter, deviceScaleFactor: 1, mobile: false });
			await page.open(pathToFileURL(path).href);
			expect(await page.run('document.querySelector(".first").getBoundingClientRect().height')).toBeLessThanOrEqual(
				letter.height,
			);
			expect(await page.run('getComputedStyle(document.body).color')).toBe('rgb(0, 0, 0)');
			expect(await page.run('getComputedStyle(document.querySelector("#tools")).display')).toBe('none');
		} finally {
			await page.close();
		}
	},
	60_000,
);

const sizes = [
	['a phone', 390, 844],
	['a desktop', 1440, 900],
] as const;

test.each(sizes)(
	'on %s a tick that is clicked survives a reload, the filter hides and counts, nothing leaves the page',
	async (_, width, height) => {
		const path = join(temporaryFolder(), 'audit.html');
		writeFileSync(path, renderAudit(audited(thirdOf(brokenBuild())), 'html', '').text);
		const page = await openBrowser();
		try {
			await page.send('Emulation.setDeviceMetricsOverride', {
				width,
				height,
				deviceScaleFactor: 1,
				mobile: width < 500,
			});
			await page.open(pathToFileURL(path).href);
			expect(await page.run('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
			// Large enough for a finger: 22 px, and a whole line of its own.
			expect(await page.run('document.querySelector("input[data-key]").getBoundingClientRect().width')).toBeGreaterThan(
				20,
			);
			await page.click('input[data-key]');
			expect(await page.run('document.querySelector("input[data-key]").checked')).toBe(true);
			await page.open(pathToFileURL(path).href);
			expect(await page.run('document.querySelector("input[data-key]").checked')).toBe(true);
			const before = await page.run('document.querySelectorAll(".tasks > li:not([hidden])").length');
			await page.run(
				'(() => { const place = document.querySelector("#tools select"); place.value = "rail"; place.dispatchEvent(new Event("change")); })()',
			);
			const after = await page.run('document.querySelectorAll(".tasks > li:not([hidden])").length');
			expect(after).toBeGreaterThan(0);
			expect(after).toBeLessThan(before as number);
			expect(await page.run('document.getElementById("says").textContent')).toMatch(
				/^\d+ lines? shown, 1 ticked|^\d+ lines? shown, 0 ticked/,
			);
			expect(page.asked().filter(url => !url.startsWith('file:'))).toEqual([]);
		} finally {
			await page.close();
		}
	},
	60_000,
);
