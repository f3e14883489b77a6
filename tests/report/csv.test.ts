import { expect, test } from 'vitest';
import { printCsv } from '../../src/report/csv.ts';
import { renderAudit } from '../../src/report/render.ts';
import { audited, brokenBuild } from '../support/audited.ts';

test('cells with commas and quotes are quoted, and a formula is made a text', () => {
	expect(printCsv([['a', 'b, c', 'say "x"', '=1+1', '-x']])).toBe(`a,"b, c","say ""x""",'=1+1,'-x\r\n`);
});

test('so are cells of a table with semicolons, full-width signs and signs behind spaces', () => {
	expect(printCsv([['a;=1+1', '\uff1d1+1', ' =1', 'b=1']])).toBe(`"a;=1+1",'\uff1d1+1,' =1,b=1\r\n`);
});

test('the worksheet has a row a circuit, with what is answered, what is usual, and blanks to fill in', () => {
	const [head, ...rows] = renderAudit(audited(brokenBuild()), 'csv', '').text.trimEnd().split('\r\n');
	expect(head).toBe('circuit,from,to,state,load,length,wire,fuse,usual way');
	expect(rows[0]).toBe('word feed,word box,word pump,to-do,12 A,15 ft,10 AWG,15 A,');
	expect(rows[1]).toBe('word lamp,,,done,1 A,,length needed,,');
	// The pump has questions of its own: its load and its length are theirs.
	expect(rows[2]).toMatch(/^fuel pump,,,done,14 A,14 ft,10 AWG,20 A,"?From a battery fuse/);
	expect(rows.find(row => row.startsWith('starter cable,'))).toMatch(
		/^starter cable,,,not noted,250 A \(usual\),,length needed,,/,
	);
	expect(rows.filter(row => row.includes(',not noted,')).length).toBeGreaterThan(10);
});
