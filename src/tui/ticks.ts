import type { Finding } from '../audit/audit.ts';
import { leave } from '../interview/session.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { App } from './app.ts';

/** What a finding is ticked by in the sheet: its rule, and its subject where it has one. */
const tickOf = ({ rule, subject }: Finding): string => (subject === null ? rule : `${rule} ${subject}`);

/** The lines ticked as done, as the sheet keeps them beside the answers. A tick changes no verdict: answers do. */
const ticksIn = ({ interview }: App): readonly unknown[] => {
	const ticks = interview?.sheet.ticks;
	return Array.isArray(ticks) ? ticks : [];
};

export const isTicked = (app: App, finding: Finding): boolean => ticksIn(app).includes(tickOf(finding));

/** Ticks or unticks a line, and saves that. Ticks of lines that are gone go along. */
export function tick(app: App, finding: Finding, listed: readonly Finding[]): App {
	const kept = listed.filter(other => isTicked(app, other) !== (other === finding)).map(tickOf);
	const { ticks: _old, ...bare } = app.interview!.sheet;
	const sheet = (kept.length > 0 ? { ...bare, ticks: kept } : bare) as Sheet;
	const interview = { ...app.interview!, sheet };
	const notice = kept.length > 0 ? 'Ticks are kept. A line goes once its answers say that it is done.' : null;
	return { ...app, interview, notice: notice, effects: [...app.effects, { do: 'save', sheet: leave(interview, '') }] };
}
