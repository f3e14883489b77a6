import type { Finding } from '../audit/audit.ts';
import { textIn } from '../sheet/text.ts';
import type { App } from './app.ts';
import { type Line, type Look, lines } from './text.ts';

/** The color of what is at stake. */
export const lookOf = ({ harm }: Pick<Finding, 'harm'>): Look =>
	harm === 'person' || harm === 'engine' || harm === 'strands' ? harm : 'quiet';

/** A finding whole, as lines of a width. */
export function findingLines(app: App, finding: Finding, width: number): Line[] {
	const part = (name: string, text: string) => (text ? lines(`${name}: ${text}`, width, 'plain', '  ') : []);
	const fails = finding.verdict === 'fails';
	const { questions, cautions } = app.model.rulebook;
	const asked = questions
		.filter(({ id }) => finding.missing.includes(id))
		.map(({ ask }) => textIn(ask, app.interview!.sheet.units));
	const warned = cautions.filter(({ id }) => finding.cautions.includes(id)).map(({ title }) => title);
	const taken = finding.assumed.map(id => app.model.wordings.us.label(id));
	return [
		...lines(`${fails ? '!' : '?'} ${finding.title}`, width, fails ? lookOf(finding) : 'title'),
		...(fails ? finding.do.flatMap(text => lines(`- ${text}`, width, 'plain', '  ')) : part('Needs', asked.join(' '))),
		...part('Why', finding.why),
		...part('Done when', finding.prove),
		...part('Usual values for', taken.join(', ')),
		...part('Caution', warned.join('; ')),
		...part('Source', finding.source),
	];
}
