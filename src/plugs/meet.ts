import type { Sort } from '../sheet/plugs.ts';
import { type Circuit, type Meeting, type MeetingWord, meetingWords, pairKey, type Vocabulary } from './circuit.ts';
import { isFeed, isGround, type ReadPin } from './half.ts';

/** What happens at one pin, with its reason. */
export interface Met {
	readonly meeting: MeetingWord;
	readonly why: string;
	readonly harm: string;
	readonly stage: string;
	/** Nothing says which half is live: the worst way round was taken. */
	readonly ifLive: boolean;
}

/** Worst first; of a stage the first. */
const harms = ['person', 'engine', 'strands', 'wear', 'annoys'];
const usual: Readonly<Partial<Record<MeetingWord, string>>> = { burns: 'person', kills: 'engine', wrong: 'strands' };

/** What happens when two pins touch, the worst way round. A pin that a half does not list is null: not known. */
export function meet(a: ReadPin | null, b: ReadPin | null, vocabulary: Vocabulary): Met {
	if (a?.circuit && a.circuit === b?.circuit) return met([{ meeting: 'same', why: '' }], false);
	const [left, right] = [a?.sort ?? 'unknown', b?.sort ?? 'unknown'];
	const table = ofSorts(left, right, vocabulary);
	if (!a || !b) return met([table], false);
	const dead = deadFeed(a, b) ?? deadFeed(b, a);
	if (dead && rank(table) < rank(wrong)) return met([wrong], false);
	const found = [table, ...overrides(a.circuit, b), ...overrides(b.circuit, a)];
	const feed = isFeed(left) ? a : isFeed(right) ? b : null;
	return met(found, feed !== null && feed.raw.fed_here === undefined);
}

/** What the table says of two sorts. */
export function ofSorts(a: Sort, b: Sort, { meetings, sameAs }: Vocabulary): Meeting {
	const as = (sort: Sort) => (Object.hasOwn(sameAs, sort) ? sameAs[sort]! : sort);
	return meetings[pairKey(as(a), as(b))]!;
}

const wrong: Meeting = {
	meeting: 'wrong',
	why: 'This wire is not live on its own half: it gets no feed here, and what hangs on it stays dead.',
};

const rank = ({ meeting }: Meeting): number => meetingWords.indexOf(meeting);

/** A feed that is said to be dead on its half, against something that is no feed. */
const deadFeed = (feed: ReadPin, other: ReadPin): boolean | null =>
	isFeed(feed.sort) && feed.raw.fed_here === false && !isFeed(other.sort) ? true : null;

/** What a circuit says of itself where the other wire is such as it speaks of. */
function overrides(circuit: Circuit | null, other: ReadPin): Meeting[] {
	if (!circuit) return [];
	const { grounded, fed, crossed, sort } = circuit;
	const twins = other.sort === sort && (sort === 'motor' || other.circuit?.crossed?.why === crossed?.why);
	const live = (isFeed(other.sort) && other.raw.fed_here !== false) || other.sort === 'high-driver';
	return [
		...(grounded && isGround(other.sort) ? [grounded] : []),
		...(fed && live ? [fed] : []),
		...(crossed && twins ? [crossed] : []),
	];
}

/** The worst of several: meeting, harm and stage each by itself; the last one as bad as the worst gives the reason. */
function met(found: readonly Meeting[], feedUnsaid: boolean): Met {
	const worst = found.reduce((a, b) => (rank(b) <= rank(a) ? b : a));
	const harmsMet = found.map(({ meeting, harm }) => harm ?? usual[meeting] ?? 'annoys');
	const harm = harms.find(word => harmsMet.includes(word))!;
	const { meeting } = worst;
	// What hurts somebody or the engine is settled before the plugs meet, and those meet before it cranks.
	const early = harm === 'person' || harm === 'engine';
	return {
		meeting,
		why: worst.why || (found.find(({ why }) => why !== '')?.why ?? ''),
		harm,
		stage: early ? 'crank' : (worst.stage ?? 'fire'),
		ifLive: feedUnsaid && (meeting === 'burns' || meeting === 'kills'),
	};
}
