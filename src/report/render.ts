import type { Assessment } from '../audit/assess.ts';
import { worksheet } from '../audit/worksheet.ts';
import { composeAudit } from './compose/compose.ts';
import { ladder } from './compose/ladder.ts';
import { worthMeasuring } from './compose/next.ts';
import { plugsPlan } from './compose/plugs.ts';
import { readingCard } from './compose/readings.ts';
import { cells, columns } from './compose/wiring.ts';
import { printCsv } from './csv.ts';
import { type Block, type Document, figuresOf, heading, paragraph } from './document.ts';
import type { Format } from './formats.ts';
import { printHtml } from './html.ts';
import { printJson } from './json.ts';
import { printMarkdown } from './markdown.ts';
import { pinsJson } from './pins-json.ts';
import { pinsTable } from './pins-table.ts';

/** A printed report and the files that go with it. */
export interface Rendered {
	readonly text: string;
	/** File name to content, for what goes with the text: pictures, and the file of details. */
	readonly attachments: Readonly<Record<string, string>>;
}

/**
 * An audit in one of its formats. `stem` begins the names of what goes with a Markdown file; empty: nothing does. `whole`
 * puts the details into the Markdown itself, and prints the later stages line by line.
 */
export function renderAudit(assessment: Assessment, format: Format, stem: string, whole = false): Rendered {
	switch (format) {
		case 'json':
			return { text: `${printJson(assessment.audit, 2)}\n`, attachments: {} };
		case 'csv': {
			const rows = worksheet(assessment).map(row => cells(row, assessment.wording.units));
			return { text: printCsv([columns, ...rows.map(row => columns.map(column => row[column]))]), attachments: {} };
		}
		case 'html':
			return { text: printHtml(composeAudit(assessment), assessment.model.hash), attachments: {} };
		case 'md':
			return markdown(composeAudit(assessment, { pictures: stem !== '', details: stem !== '' || whole }), stem, whole);
	}
}

function markdown(document: Document, stem: string, whole: boolean): Rendered {
	const { title, blocks, details = [] } = document;
	const name = stem === '' ? null : stem.replace(/[^A-Za-z0-9._-]+/g, '-').replace(/^[-.]+/, '') || 'audit';
	const pictures = Object.fromEntries(
		name === null ? [] : figuresOf(document).map(figure => [`${name}-${figure.name}.svg`, figure.svg]),
	);
	if (whole)
		return {
			text: printMarkdown({ title, blocks: [...unfolded(blocks), ...details] }, name, ''),
			attachments: pictures,
		};
	if (name === null) return { text: printMarkdown(document, null), attachments: {} };
	const file = `${name}-details.md`;
	const apart = [heading(1, `${title}: details`), ...details];
	return {
		text: printMarkdown(document, name, file),
		attachments: { ...pictures, [file]: printMarkdown({ title, blocks: apart }, name, '') },
	};
}

const unfolded = (blocks: readonly Block[]): Block[] =>
	blocks.flatMap(block => (block.is === 'fold' ? [heading(3, block.text), ...block.blocks] : [block]));

/** The plan of the plugs in one of its formats. */
export function renderPins(assessment: Assessment, format: Format): string {
	switch (format) {
		case 'json':
			return `${printJson(pinsJson(assessment), 2)}\n`;
		case 'csv':
			return printCsv(pinsTable(assessment));
		case 'html':
			return printHtml(pinsDocument(assessment), assessment.model.hash);
		case 'md':
			return printMarkdown(pinsDocument(assessment), null);
	}
}

function pinsDocument(assessment: Assessment): Document {
	const title = `Plugs: ${assessment.sheet.name}`;
	const blocks = plugsPlan(assessment);
	const none = [paragraph('This sheet has no plugs yet: read a table in with --read, or type them in the interview.')];
	return { title, blocks: [heading(1, title), ...(blocks.length > 0 ? blocks : none)] };
}

const parts = {
	limits: { compose: ladder, empty: 'No limit could be placed: too little is answered.' },
	next: { compose: worthMeasuring, empty: 'Nothing that you could measure would turn a line.' },
	readings: { compose: readingCard, empty: 'No reading could be worked out: too little is answered.' },
} as const;

/** One part of an audit alone, for the terminal. */
export function renderPart(assessment: Assessment, part: keyof typeof parts): string {
	const { compose, empty } = parts[part];
	const blocks = compose(assessment);
	return blocks.length > 0 ? printMarkdown({ title: '', blocks }, null) : `${empty}\n`;
}
