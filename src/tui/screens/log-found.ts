import type { Finding } from '../../audit/audit.ts';
import type { LogReport } from '../../audit/log-report.ts';
import { plotLog } from '../../report/log/render.ts';
import type { App } from '../app.ts';
import { findingLines, lookOf } from '../finding-lines.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys, pageKeys } from '../keymap.ts';
import { take } from '../log-steps.ts';
import { clip, line } from '../text.ts';

/** What the log contradicts, then what it does not show of what matters. */
function listed({ log }: App): Finding[] {
	const { findings } = log!.report!.json;
	return findings.filter(({ verdict }) => verdict === 'fails' || verdict === 'cannot-tell');
}

const count = (app: App) => listed(app).length;
const settles = (app: App) => (app.log?.report?.json.answers.length ?? 0) > 0;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter', 'text:a'],
		shown: 'Enter',
		label: 'the answers that it settles',
		when: settles,
		run: app => ({ ...app, screen: 'logAnswers', cursor: 0 }),
	},
	{ keys: ['enter'], shown: 'Enter', label: 'keep the log', when: app => !settles(app), run: take },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'the columns',
		run: app => ({ ...app, screen: 'logColumns', cursor: 0, scroll: 0 }),
	},
	...listKeys(count).filter(({ keys }) => !keys[0]!.startsWith('page-')),
	...pageKeys(() => true),
];

/** What came of the fit; empty where there was none. */
function fitWords({ json }: LogReport): string[] {
	if (!json.fit) return [];
	if (json.fit.applied) return ['The model is fitted to this car: audits rest on it once the log is kept.'];
	return [json.fit.misfit ? 'The log fits no car of these answers.' : 'The model could not be fitted to it.'];
}

/** What the engine did and what the log contradicts. */
export function view(app: App, width: number): Frame {
	const { json } = app.log!.report!;
	const found = listed(app);
	const pulls = json.episodes.filter(({ kind }) => kind === 'pull').length;
	const fails = found.filter(({ verdict }) => verdict === 'fails').length;
	const plot = plotLog(app.log!.report!, Math.min(width, 100), !app.appearance.unicode).split('\n');
	const summary = `${pulls === 1 ? '1 pull' : `${pulls} pulls`}; ${fails === 0 ? 'no rule on logs fails' : `${fails} to do`}.`;
	const at = found[app.cursor];
	return {
		top: [
			line(clip(`Log ${json.file.name}: ${summary}`, width), 'title'),
			...fitWords(app.log!.report!).map(text => line(clip(text, width), 'quiet')),
			...plot.filter(text => text !== '').map(text => line(clip(text, width), 'quiet')),
		],
		rows:
			found.length === 0
				? null
				: {
						items: found.map(({ verdict, title, subject }) =>
							clip(
								`${verdict === 'fails' ? '!' : '?'} ${title}${subject === null ? '' : ` (pull ${subject})`}`,
								width - 2,
							),
						),
						looks: found.map(finding => (finding.verdict === 'fails' ? lookOf(finding) : 'quiet')),
						cursor: app.cursor,
					},
		...(at ? { help: findingLines(app, at, width), scroll: app.scroll } : {}),
		bottom: [],
		panel: [],
		footer: [],
	};
}
