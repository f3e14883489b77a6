import { describe, expect, test } from 'vitest';
import { renderAudit } from '../../src/report/render.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { elements, readHtml } from '../support/tree.ts';

const { text } = renderAudit(audited(brokenBuild()), 'html', '');
const all = elements(readHtml(text));
const attributes = all.flatMap(({ attrs }) => attrs);

describe('the HTML audit', () => {
	test('is one file: no script, nothing fetched, nothing that acts', () => {
		expect(all.filter(({ tagName }) => ['script', 'link', 'img', 'iframe', 'object', 'a'].includes(tagName))).toEqual(
			[],
		);
		expect(attributes.filter(({ name }) => /^on|^href$|^src$/.test(name))).toEqual([]);
		expect(text).not.toMatch(/@import|url\(/);
	});

	test('names each id once, and every picture points to its own title and words', () => {
		const ids = attributes.filter(({ name }) => name === 'id').map(({ value }) => value);
		expect(new Set(ids).size).toBe(ids.length);
		const pointed = attributes
			.filter(({ name }) => name === 'aria-labelledby')
			.flatMap(({ value }) => value.split(' '));
		expect(pointed.length).toBe(2 * all.filter(({ tagName }) => tagName === 'svg').length);
		expect(pointed.length).toBeGreaterThan(2);
		for (const id of pointed) expect(ids).toContain(id);
	});

	test('opens a part with each heading of the second level, and keeps the card of readings on one page', () => {
		const sections = all.filter(({ tagName }) => tagName === 'section');
		expect(sections.length).toBe(all.filter(({ tagName }) => tagName === 'h2').length + 1);
		const card = sections.filter(({ attrs }) => attrs.some(({ name, value }) => name === 'class' && value === 'card'));
		expect(card.length).toBe(1);
	});

	test('has a style for paper', () => {
		expect(text).toContain('@media print');
		expect(text).toContain('@page{margin:');
	});
});
