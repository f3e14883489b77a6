import type { Finding } from '../../audit/audit.ts';
import type { LogReport } from '../../audit/log-report.ts';
import { isPerPull } from '../../log/results.ts';
import { type Block, heading, type Inline, listed, paragraph, strong } from '../document.ts';

/** What was seen is written out of so many pulls; of the others, that it was the same. */
const writtenOut = 3;

/** What the log contradicts, each once with the pulls that show it; then what it could not show, and what that needs. */
export function composeFindings(report: LogReport): Block[] {
	const fails = report.json.findings.filter(({ verdict }) => verdict === 'fails');
	const nothing = paragraph('No rule on logs fails. That is not proof: it is what this log shows.');
	return [
		heading(2, 'What the log contradicts'),
		...(fails.length === 0 ? [nothing] : []),
		...[...groups(fails, ({ rule, title }) => `${rule} ${title}`).values()].map(task),
		...undecided(report),
	];
}

function task(findings: readonly Finding[]): Block {
	const [{ title, do: steps, prove }] = findings as [Finding];
	const [first = '', ...rest] = steps;
	const inOrder = findings.toSorted((a, b) => Number(a.subject) - Number(b.subject));
	const others = inOrder.slice(writtenOut).length;
	const details: Inline[][] = [
		...rest.map((step): Inline[] => [step]),
		...inOrder.slice(0, writtenOut).map(({ why }): Inline[] => [strong('Why: '), why]),
		...(others === 0 ? [] : [[`The same in ${others === 1 ? 'one more pull' : `${others} more pulls`}.`]]),
		[strong('Done when: '), prove],
	];
	return { is: 'task', text: [strong(`${title}${pullsOf(inOrder)}. `), first], details };
}

function pullsOf(findings: readonly Finding[]): string {
	const pulls = findings.flatMap(({ subject }) => subject ?? []);
	if (pulls.length < 2) return pulls.length === 0 ? '' : ` (pull ${pulls[0]})`;
	return ` (pulls ${pulls.slice(0, -1).join(', ')} and ${pulls.at(-1)})`;
}

/** Rules that could not be judged, under what each of them lacks. */
function undecided(report: LogReport): Block[] {
	const open = report.json.findings.filter(({ verdict }) => verdict === 'cannot-tell');
	const lines = groups(open, finding => lackedBy(report, finding).join(', '));
	const items = [...lines].map(([lacks, findings]): Inline[] => {
		const titles = [...new Set(findings.map(({ title }) => title))].join('; ');
		return lacks === '' ? [titles] : [strong(`${lacks}: `), titles];
	});
	const how = paragraph('What stands first is what these lines need, logged long and often enough, or in the sheet.');
	return listed([heading(3, 'What this log does not show'), how], items, 'small');
}

/** Channels and answers, in words, that the figures of a finding lack. */
function lackedBy({ json, model, wording }: LogReport, { numbers, subject, missing }: Finding): string[] {
	const lacking = Object.entries(numbers).flatMap(([id, value]) => {
		const entry = value === null ? json.quantities[id] : undefined;
		const figure = entry && isPerPull(entry) ? entry.find(({ pull }) => String(pull) === subject) : entry;
		return figure?.missing ?? [];
	});
	const titles = new Map(model.rulebook.channels.map(({ id, title }) => [id, title]));
	const inWords = (id: string) => titles.get(id) ?? (id === 'pull' ? 'a longer pull' : wording.label(id));
	const logged = new Set(json.channels.flatMap(({ channel, samples }) => (samples ? [channel] : [])));
	const all = [...lacking, ...missing];
	// What is not there at all comes before what was logged too short or too slowly.
	const absent = all.filter(id => !logged.has(id));
	return [...new Set((absent.length > 0 ? absent : all).map(inWords))].sort();
}

function groups(findings: readonly Finding[], key: (finding: Finding) => string): Map<string, Finding[]> {
	const found = new Map<string, Finding[]>();
	for (const finding of findings) found.set(key(finding), [...(found.get(key(finding)) ?? []), finding]);
	return found;
}
