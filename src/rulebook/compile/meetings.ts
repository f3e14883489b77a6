import { type Meeting, meetingWords, meterStates, pairKey, type Reads, type Vocabulary } from '../../plugs/circuit.ts';
import { sorts } from '../../sheet/plugs.ts';
import { harms, stages } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';
import { refuseNames } from './words.ts';

/** What a meter shows in each state, and what it means when it shows something else. */
export function readReads(fields: Fields | null): Reads {
	if (!fields) return {};
	const reads: Record<string, [string, string]> = {};
	for (const state of meterStates) {
		if (!fields.has(state)) continue;
		const [expect = '', otherwise = ''] = fields.texts(state);
		if (otherwise === '') fields.report(state, `${state}: what to expect, and what it means when it is not so`);
		reads[state] = [expect, otherwise];
	}
	fields.refuseRest();
	return reads;
}

/** A meeting that a circuit names for itself; null: it names none under this key. */
export function override(fields: Fields, key: string): Meeting | null {
	const inner = fields.inner(key, false);
	if (!inner) return null;
	const meeting = readMeeting(inner);
	inner.refuseRest();
	return meeting;
}

function readMeeting(fields: Fields): Meeting {
	const why = fields.text('why', false);
	refuseNames(fields, 'why', why);
	return {
		meeting: fields.oneOf('meeting', meetingWords, 'unknown'),
		why,
		...(fields.has('harm') ? { harm: fields.oneOf('harm', harms, 'annoys') } : {}),
		...(fields.has('stage') ? { stage: fields.oneOf('stage', stages, 'tidy') } : {}),
	};
}

/** Reads rules/meetings.yaml: the sorts of circuits, and what happens when two of them meet. Reports a pair that is missing. */
export function readMeetings(root: Fields): Pick<Vocabulary, 'sorts' | 'sameAs' | 'meetings'> {
	const about = root.inner('sorts');
	const declared = Object.fromEntries(
		(about?.keys() ?? []).map(sort => {
			const inner = about!.inner(sort);
			const said = { words: inner?.text('words') ?? '', reads: readReads(inner?.inner('reads', false) ?? null) };
			if (!sorts.includes(sort as never)) about!.reportName(sort, `${quote(sort)} is no sort: ${sorts.join(', ')}`);
			inner?.refuseRest();
			return [sort, said];
		}),
	);
	for (const sort of sorts)
		if (!Object.hasOwn(declared, sort)) root.reportName('sorts', `the sort ${sort} has no words here`);
	const alias = root.inner('same_as', false);
	const sameAs = Object.fromEntries((alias?.keys() ?? []).map(sort => [sort, alias!.oneOf(sort, sorts, 'unknown')]));
	const meetings: Record<string, Meeting> = {};
	for (const inner of root.innerList('meetings')) {
		const meeting = readMeeting(inner);
		for (const pair of inner.texts('pairs')) {
			const [a = '', b = ''] = pair.split(' + ');
			const key = pairKey(a, b);
			for (const sort of [a, b])
				if (!sorts.includes(sort as never)) inner.report('pairs', `${quote(sort)} is no sort: ${sorts.join(', ')}`);
			if (Object.hasOwn(meetings, key)) inner.report('pairs', `${quote(pair)} is here already`);
			meetings[key] = meeting;
		}
		inner.refuseRest();
	}
	const own = sorts.filter(sort => !Object.hasOwn(sameAs, sort));
	for (const [at, a] of own.entries())
		for (const b of own.slice(at))
			if (!Object.hasOwn(meetings, pairKey(a, b)))
				root.reportName('meetings', `nothing says what happens when ${a} meets ${b}: add the pair`);
	return { sorts: declared, sameAs, meetings };
}
