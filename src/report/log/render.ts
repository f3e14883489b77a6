import type { LogReport } from '../../audit/log-report.ts';
import { figuresOf } from '../document.ts';
import { printHtml } from '../html.ts';
import { printJson } from '../json.ts';
import { printMarkdown } from '../markdown.ts';
import type { Rendered } from '../render.ts';
import { composeLog } from './compose.ts';
import { plot } from './plot.ts';

/** A judged log in one of its formats. `stem` begins the names of the picture files of a Markdown file; empty: no pictures. `hash` is SHA-256 in hex. */
export function renderLog(
	report: LogReport,
	format: 'md' | 'html' | 'json',
	stem: string,
	hash: (text: string) => string,
): Rendered {
	if (format === 'json') return { text: `${printJson(report.json, 2)}\n`, attachments: {} };
	if (format === 'html') return { text: printHtml(composeLog(report, true), hash), attachments: {} };
	if (stem === '') return { text: printMarkdown(composeLog(report, false), null), attachments: {} };
	const name = stem.replace(/[^A-Za-z0-9._-]+/g, '-').replace(/^[-.]+/, '') || 'log';
	const document = composeLog(report, true);
	return {
		text: printMarkdown(document, name),
		attachments: Object.fromEntries(figuresOf(document).map(figure => [`${name}-${figure.name}.svg`, figure.svg])),
	};
}

/** Engine speed over the log, for a terminal so wide. */
export function plotLog({ overview, json }: LogReport, width: number, ascii: boolean): string {
	if (overview.length < 2) return '';
	const most = Math.round(Math.max(...overview.map(([, speed]) => speed)));
	const minutes = (json.file.seconds / 60).toFixed(1);
	return [`engine speed, 0 to ${most} rpm, over ${minutes} min`, ...plot(overview, width, 6, ascii), ''].join('\n');
}
