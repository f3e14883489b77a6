import { Window } from 'happy-dom';
import { afterEach, expect, test } from 'vitest';
import { renderAudit } from '../../src/report/render.ts';
import { audited, brokenBuild, thirdOf } from '../support/audited.ts';

const { text } = renderAudit(audited(thirdOf(brokenBuild())), 'html', '');

const open: Window[] = [];
afterEach(async () => {
	for (const window of open.splice(0)) await window.happyDOM.close();
});

/** The page in a browser's document, its script run or not. What it reaches for outside is noted. */
function load({ script = true, stored = null as string | null } = {}) {
	const reached: string[] = [];
	const window = new Window({
		url: 'http://localhost/audit.html',
		settings: {
			enableJavaScriptEvaluation: script,
			suppressInsecureJavaScriptEnvironmentWarning: true,
			fetch: {
				interceptor: {
					beforeAsyncRequest: ({ request }: { request: { url: string } }) => {
						reached.push(request.url);
					},
				},
			},
		} as never,
	});
	open.push(window);
	if (stored !== null) window.localStorage.setItem(key(), stored);
	window.document.write(text);
	const all = (selector: string) => [...window.document.querySelectorAll(selector)] as unknown as Element[];
	return { window, all, reached, says: () => window.document.getElementById('says')!.textContent };
}

interface Element {
	checked: boolean;
	hidden: boolean;
	value: string;
	readonly dataset: Readonly<Record<string, string>>;
	readonly textContent: string;
	closest(selector: string): Element;
	click(): void;
	dispatchEvent(event: unknown): boolean;
}

const key = () => `swap-audit ticks ${/<body data-sheet="([^"]*)"/.exec(text)![1]}`;

test('a tick survives a reload, and is the same on page one and in the list', () => {
	const first = load();
	const [box] = first.all('input[data-key]');
	box!.click();
	const stored = first.window.localStorage.getItem(key());
	expect(JSON.parse(stored!)).toEqual([box!.dataset.key]);
	const again = load({ stored });
	const ticked = again.all('input[data-key]').filter(({ checked }) => checked);
	expect(ticked.length).toBe(2);
	for (const other of ticked) expect(other.dataset.key).toBe(box!.dataset.key);
	ticked[0]!.click();
	expect(again.window.localStorage.getItem(key())).toBe('[]');
	expect(again.all('input[data-key]').some(({ checked }) => checked)).toBe(false);
});

test('what was stored by another hand breaks nothing', () => {
	for (const stored of ['{', '5', 'null', '["gone"]'])
		expect(load({ stored }).says()).toMatch(/lines shown, 0 ticked\. Ticks stay/);
});

test('the filter hides what is elsewhere, and counts what is left', () => {
	const { window, all, says } = load();
	const boxes = all('input[data-key]');
	expect(says()).toContain(`${new Set(boxes.map(({ dataset }) => dataset.key)).size} lines shown`);
	const [place, stage] = all('#tools select');
	place!.value = 'under';
	place!.dispatchEvent(new window.Event('change'));
	const shown = () => boxes.filter(box => !box.closest('li').hidden);
	expect(shown().length).toBeGreaterThan(2);
	expect(shown().length).toBeLessThan(boxes.length);
	for (const { dataset } of shown()) expect(dataset.place).toBe('under');
	stage!.value = 'move';
	stage!.dispatchEvent(new window.Event('change'));
	for (const { dataset } of shown()) expect([dataset.place, dataset.stage]).toEqual(['under', 'move']);
	expect(says()).toContain(`${new Set(shown().map(({ dataset }) => dataset.key)).size} lines shown`);
});

test('without script every line is there and nothing is hidden but the filter', () => {
	const { all } = load({ script: false });
	expect(all('input[data-key]').length).toBeGreaterThan(50);
	expect(all('[hidden]').length).toBe(1);
});

test('nothing leaves the page', () => {
	const { all, reached } = load();
	for (const box of all('input[data-key]').slice(0, 5)) box.click();
	expect(reached).toEqual([]);
	expect(text).not.toMatch(/fetch|XMLHttpRequest|sendBeacon|WebSocket|import\(/);
});
