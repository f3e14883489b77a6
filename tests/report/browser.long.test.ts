import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { renderAudit } from '../../src/report/render.ts';
import { audited, brokenBuild, thirdOf } from '../support/audited.ts';
import { openBrowser } from '../support/browser.ts';
import { temporaryFolder } from '../support/folder.ts';

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
