import type { Assessment } from '../audit/assess.ts';
import { worksheet } from '../audit/worksheet.ts';
import { composeAudit } from './compose/compose.ts';
import { ladder } from './compose/ladder.ts';
import { next } from './compose/next.ts';
import { readingCard } from './compose/readings.ts';
import { cells, columns } from './compose/wiring.ts';
import { printCsv } from './csv.ts';
import type { Block } from './document.ts';
import { printHtml } from './html.ts';
import { printMarkdown } from './markdown.ts';

export interface Rendered {
	readonly text: string;
	/** File name to SVG, for pictures beside the text. */
	readonly pictures: Readonly<Record<string, string>>;
}

/** An audit in one of its formats. `stem` begins the names of the pictures beside a Markdown file; empty: no pictures. */
export function renderAudit(assessment: Assessment, format: 'md' | 'html' | 'json' | 'csv', stem: string): Rendered {
	switch (format) {
		case 'json':
			return { text: `${JSON.stringify(assessment.audit, null, 2)}\n`, pictures: {} };
		case 'csv': {
			const rows = worksheet(assessment).map(row => cells(row, assessment.wording.units));
			return { text: printCsv([columns, ...rows]), pictures: {} };
		}
		case 'html':
			return { text: printHtml(composeAudit(assessment)), pictures: {} };
		case 'md': {
			const document = composeAudit(assessment);
			const names = stem.replace(/[^A-Za-z0-9._-]+/g, '-').replace(/^[-.]+/, '') || 'audit';
			const drawn = document.blocks.filter((block): block is Extract<Block, { is: 'figure' }> => block.is === 'figure');
			return {
				text: printMarkdown(document, stem === '' ? null : names),
				pictures: stem === '' ? {} : Object.fromEntries(drawn.map(({ name, svg }) => [`${names}-${name}.svg`, svg])),
			};
		}
	}
}

const parts = {
	limits: { compose: ladder, empty: 'No limit could be placed: too little is answered.' },
	next: { compose: next, empty: 'Nothing that you could measure would turn a line.' },
	readings: { compose: readingCard, empty: 'No reading could be worked out: too little is answered.' },
} as const;

/** One part of an audit alone, for the terminal. */
export function renderPart(assessment: Assessment, part: keyof typeof parts): string {
	const { compose, empty } = parts[part];
	const blocks = compose(assessment);
	return blocks.length > 0 ? printMarkdown({ title: '', blocks }, null) : `${empty}\n`;
}
