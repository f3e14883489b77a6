import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { renderAudit } from '../../src/report/render.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { elements, readHtml } from '../support/tree.ts';

const { text } = renderAudit(audited(brokenBuild()), 'html', '');
const all = elements(readHtml(text));
const attributes = all.flatMap(({ attrs }) => attrs);

const hashOf = (content: string) => `'sha256-${createHash('sha256').update(content).digest('base64')}'`;

describe('the HTML audit', () => {
	test('is one file: nothing fetched, nothing that acts but its one script, links into the page alone', () => {
		expect(all.filter(({ tagName }) => ['link', 'img', 'iframe', 'object', 'form'].includes(tagName))).toEqual([]);
		expect(attributes.filter(({ name }) => /^on|^src$|^style$/.test(name))).toEqual([]);
		const ids = new Set(attributes.filter(({ name }) => name === 'id').map(({ value }) => `#${value}`));
		const links = attributes.filter(({ name }) => name === 'href').map(({ value }) => value);
		expect(links.length).toBeGreaterThan(3);
		for (const link of links) expect(ids).toContain(link);
		expect(text).not.toMatch(/@import|url\(/);
	});

	test('has a policy that lets in nothing but its own style and script, named by their hashes', () => {
		const [policy] = attributes.filter(({ value }) => value.startsWith('default-src'));
		const inside = (tag: string) =>
			[...text.matchAll(new RegExp(`<${tag}>(.*?)</${tag}>`, 'gs'))].map(([, content]) => content!);
		expect([inside('style').length, inside('script').length]).toEqual([1, 1]);
		expect(policy!.value.split('; ')).toEqual([
			"default-src 'none'",
			`style-src ${hashOf(inside('style')[0]!)}`,
			`script-src ${hashOf(inside('script')[0]!)}`,
			"base-uri 'none'",
			"form-action 'none'",
		]);
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
