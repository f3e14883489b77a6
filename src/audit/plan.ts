import { harms } from '../rulebook/rulebook.ts';
import type { Access } from '../sheet/access.ts';
import type { PlanLine } from './plan-lines.ts';

/** What is done in one go, in one place. */
export interface Evening {
	readonly access: Access;
	readonly minutes: number;
	/** Nobody opens this for answers alone: they wait for the day when it is open anyhow. */
	readonly waits: boolean;
	/** In the order in which they are done. */
	readonly lines: readonly PlanLine[];
}

/** The plan: evenings in order, and what is in none of them. */
export interface Evenings {
	readonly evenings: readonly Evening[];
	/** Lines that are left out: elsewhere, where one place was asked for, or waiting for something elsewhere. */
	readonly waiting: readonly PlanLine[];
}

/** Places where a look costs nothing but walking there: it may be taken on any evening whose work needs it. */
const atHand: readonly Access[] = ['bay', 'dash', 'papers'];
/** What is opened once is worked on until nothing is left there: to open it a second time costs an evening, or spills fuel. */
const kept: readonly Access[] = ['bench', 'transmission-out', 'heads-off', 'pan-off', 'tank', 'rail'];

/** Nobody opens these for an answer alone. With the engine out only the heads are left of them. */
const notForAnAnswer: readonly Access[] = ['bench', 'transmission-out', 'heads-off', 'pan-off'];

/** What there is time and room for. */
export interface PlanOptions {
	/** The time there is, min. */
	readonly minutes: number;
	/** The one place to plan for; null: all. */
	readonly only?: Access | null;
	readonly engineOut?: boolean;
}

/**
 * Groups lines into evenings: one place at a time, what hurts people first, what stands open together done together, nothing
 * before what it needs. A look goes into the first evening at its place. No evening is longer than `minutes`, unless one line
 * alone is. Lines come most urgent first; the same lines give the same evenings.
 */
export function planEvenings(
	lines: readonly PlanLine[],
	{ minutes, only = null, engineOut = false }: PlanOptions,
): Evenings {
	const plan = new Planner(lines, minutes, engineOut ? ['heads-off'] : notForAnAnswer);
	const evenings: Evening[] = [];
	for (let evening = plan.next(only); evening; evening = plan.next(only)) evenings.push(evening);
	return { evenings, waiting: plan.left };
}

class Planner {
	private readonly budget: number;
	private readonly byKey: ReadonlyMap<string, PlanLine>;
	/** Most urgent first, what is needed for something urgent with it. */
	private readonly ranked: readonly PlanLine[];
	private readonly urgency: ReadonlyMap<PlanLine, number>;
	private readonly done = new Set<PlanLine>();
	private readonly waiting: ReadonlySet<PlanLine>;
	private last: Access | null = null;

	constructor(lines: readonly PlanLine[], budget: number, notForAnAnswer: readonly Access[]) {
		this.budget = budget;
		this.byKey = new Map(lines.map(line => [line.key, line]));
		this.urgency = this.urgencies(lines);
		const needed = new Set(lines.flatMap(({ needs }) => needs));
		const worked = new Set(lines.flatMap(({ finding, access }) => (finding ? [access] : [])));
		this.waiting = new Set(
			lines.filter(
				({ key, access, finding }) =>
					!finding && notForAnAnswer.includes(access) && !worked.has(access) && !needed.has(key),
			),
		);
		const place = new Map(lines.map((line, index) => [line, index]));
		this.ranked = [...lines].sort(
			(a, b) =>
				Number(this.waiting.has(a)) - Number(this.waiting.has(b)) ||
				this.urgency.get(a)! - this.urgency.get(b)! ||
				Number(a.look) - Number(b.look) ||
				Number(needed.has(b.key)) - Number(needed.has(a.key)) ||
				place.get(a)! - place.get(b)!,
		);
	}

	get left(): PlanLine[] {
		return this.ranked.filter(line => !this.done.has(line));
	}

	/** The worst that waits for each line, itself or through lines that need it: 0 for a person. */
	private urgencies(lines: readonly PlanLine[]): Map<PlanLine, number> {
		const urgency = new Map(lines.map(line => [line, harms.indexOf(line.harm)]));
		const raise = (line: PlanLine, to: number) => {
			for (const before of line.needs.map(key => this.byKey.get(key)!)) {
				if (urgency.get(before)! <= to) continue;
				urgency.set(before, to);
				raise(before, to);
			}
		};
		for (const line of lines) raise(line, urgency.get(line)!);
		return urgency;
	}

	/** The next evening: where the last one was, if that is kept open, else where the most urgent line is; null at the end. */
	next(only: Access | null): Evening | null {
		return (this.last && kept.includes(this.last) ? this.startAt(this.last) : null) ?? this.startAt(only);
	}

	/** The evening that the most urgent line begins, of all or of one place. */
	private startAt(only: Access | null): Evening | null {
		for (const seed of this.ranked) {
			if (this.done.has(seed) || (only !== null && seed.access !== only)) continue;
			const first = this.withFirst(seed, new Set([seed.access]));
			if (first) return this.evening(seed.access, first);
		}
		return null;
	}

	/** An evening that begins with some lines, as far as they fit, and takes in what else fits. */
	private evening(access: Access, first: readonly PlanLine[]): Evening {
		const taken: PlanLine[] = [];
		let minutes = 0;
		const take = (line: PlanLine) => {
			taken.push(line);
			this.done.add(line);
			minutes += line.minutes;
		};
		for (const line of first)
			if (taken.length === 0 || minutes + line.minutes <= this.budget) take(line);
			else break;
		for (;;) {
			const open = new Set([access, ...taken.flatMap(({ opens }) => opens)]);
			const more = this.bestFitting(open, this.budget - minutes);
			if (!more) break;
			more.forEach(take);
		}
		const here = taken.some(line => line.access === access) ? access : taken[0]!.access;
		this.last = here;
		return { access: here, minutes, waits: taken.some(line => this.waiting.has(line)), lines: taken };
	}

	/**
	 * The most urgent line that fits, behind what it needs: work that keeps people whole, then looks here, then other work, then
	 * looks from elsewhere for the time that is left.
	 */
	private bestFitting(open: ReadonlySet<Access>, minutes: number): PlanLine[] | null {
		const turn = (line: PlanLine) => {
			if (line.look) return open.has(line.access) ? 1 : 3;
			return this.urgency.get(line) === 0 ? 0 : 2;
		};
		let best: { readonly turn: number; readonly lines: PlanLine[] } | null = null;
		for (const line of this.ranked) {
			if (this.done.has(line) || !this.isOpen(line, open) || (best && turn(line) >= best.turn)) continue;
			const lines = this.withFirst(line, open);
			if (lines && total(lines) <= minutes) best = { turn: turn(line), lines };
		}
		return best?.lines ?? null;
	}

	/** Whether a line can be done where this is open. Papers are looked at anywhere but on a drive; bay and dash are a step apart. */
	private isOpen({ access, look }: PlanLine, open: ReadonlySet<Access>): boolean {
		if (open.has(access) || !look) return open.has(access);
		if (access === 'papers') return !open.has('driving');
		return (access === 'bay' && open.has('dash')) || (access === 'dash' && open.has('bay'));
	}

	/** A line behind everything that it needs and that is not done, in order; null when some of it is elsewhere. */
	private withFirst(line: PlanLine, open: ReadonlySet<Access>): PlanLine[] | null {
		const lines: PlanLine[] = [];
		const collect = (next: PlanLine): boolean => {
			if (this.done.has(next) || lines.includes(next)) return true;
			const can = next === line || open.has(next.access) || (next.look && atHand.includes(next.access));
			if (!can || !next.needs.every(key => collect(this.byKey.get(key)!))) return false;
			lines.push(next);
			return true;
		};
		return collect(line) ? lines : null;
	}
}

const total = (lines: readonly PlanLine[]): number => lines.reduce((sum, { minutes }) => sum + minutes, 0);
