import { logQuantities } from './all.ts';
import { Ambient } from './ambient.ts';
import type { Analysis } from './analysis.ts';
import type { Block } from './block.ts';
import type { Car } from './car.ts';
import { type Channel, type Moving, movingIn } from './channel.ts';
import type { Chunk } from './chunk.ts';
import type { Declared } from './declared.ts';
import { DemandTracker } from './demand.ts';
import { whileRunning, withDerived } from './derived.ts';
import type { Episode } from './episodes.ts';
import { findEpisodes } from './find-episodes.ts';
import { Lag } from './lag.ts';
import type { Measured } from './measured.ts';
import { type PullPoints, pointsOf } from './points.ts';
import type { PullView } from './pull.ts';
import { viewPull } from './pull-view.ts';
import { PulseFormDetector } from './pulse-form-detector.ts';
import type { Accumulator, PullQuantity, RunQuantity } from './quantity.ts';
import { addSamples, type Samples } from './samples.ts';
import { within } from './series.ts';
import { ReadingStore } from './store.ts';
import { type Channels, ticksOf } from './ticks.ts';
import { Warmth } from './warmth.ts';

/** Readings at which a part of the log is judged: two numbers each, so about 2 MB, and many times that while it is judged. */
const defaultLimit = 120_000;

/** s at the end of a part that the next part reads once more: an episode may begin there. */
const overlap = 30;

/** s: before the first reading, by more than two readings of one instant may differ. */
const beforeAll = -1e-6;

/** A part is at least so many overlaps long, or a fast log would read most rows twice; unless it has so many times the readings. */
const [minOverlaps, maxFactor] = [4, 5];

/**
 * Judges a log as it comes. Blocks are taken in the order of the table; memory is bounded by `most` readings whatever the
 * length of the log. A log that is longer is judged part by part: what an episode is (lowest demand, ambient) is then known
 * from the part and those before it, and an episode longer than a part is cut in two.
 */
export class Analyzer {
	private readonly store: ReadingStore;
	private readonly demand: DemandTracker;
	private readonly warmth: Warmth;
	private readonly lag: Lag;
	private readonly ambient: Ambient;
	private readonly pulse = new PulseFormDetector();
	private readonly accumulators: readonly (readonly [RunQuantity, Accumulator])[];
	private readonly perPull = logQuantities.filter((one): one is PullQuantity => one.logged === 'pull');
	private readonly results = new Map<string, Measured[]>(this.perPull.map(({ id }) => [id, []]));
	private readonly episodes: Episode[] = [];
	private readonly points: PullPoints[] = [];
	private readonly samples: Samples = new Map();
	private judgedTo = beforeAll;
	private countedTo = beforeAll;
	private pullCount = 0;
	private readonly car: Car;
	private readonly declared: Declared;
	private readonly moving: Moving;
	private readonly most: number;

	/** @param known the channels of rules/channels.yaml */
	constructor(car: Car, declared: Declared, known: readonly Channel[], most = defaultLimit) {
		this.car = car;
		this.declared = declared;
		this.moving = movingIn(known);
		this.most = most;
		this.store = new ReadingStore(declared.running.gap);
		this.demand = new DemandTracker(declared.demand);
		this.warmth = new Warmth(declared);
		this.lag = new Lag(declared.lag);
		this.ambient = new Ambient(car);
		this.accumulators = logQuantities
			.filter((one): one is RunQuantity => one.logged === 'run')
			.map(one => [one, one.accumulator()] as const);
	}

	push(block: Block): void {
		this.store.push(block);
		const { size, now } = this.store;
		const long = now - this.judgedTo > minOverlaps * overlap;
		if (size > (long ? this.most : maxFactor * this.most)) this.judge(false, []);
	}

	/** The end of the log. `impossible`: channels of which values lay outside of what they can ever be. */
	finish(impossible: readonly string[] = []): Analysis {
		this.store.settle();
		this.judge(true, impossible);
		const speed = this.samples.get('engine_speed');
		return {
			episodes: this.episodes,
			run: new Map(this.accumulators.map(([{ id }, accumulator]) => [id, accumulator.result()])),
			pulls: this.results,
			points: this.points,
			lag: this.lag.found ?? null,
			ambient: this.ambient.known,
			demand: this.demand.source,
			pulse: this.samples.get('injector_pulse')?.count ? this.pulse.detected : null,
			samples: this.samples,
			rate: speed && this.store.now > 0 ? (speed.count - 1) / this.store.now : null,
			seconds: this.store.now,
		};
	}

	/** Judges what is kept, but at the end what may still go on. */
	private judge(last: boolean, impossible: readonly string[]): void {
		const { store, declared, car } = this;
		const breaks = store.jumps.map(({ at }) => at);
		const until = store.now;
		addSamples(this.samples, store, this.countedTo + 2e-9, until);
		this.ambient.take(store, declared);
		const channels = withDerived(store, this.ambient.known?.value);
		this.takeDemand(until);
		const ticks = ticksOf(channels, this.demand, this.ambient.known?.value, breaks, declared);
		this.warmth.take(ticks, until);
		const thresholds = { lowest: this.demand.lowest, full: this.demand.full };
		const found = findEpisodes(ticks, thresholds, declared);
		const { judged, to } = this.closed(found, last);
		const numbered = this.numbered(judged, channels);
		this.pulse.take({ ...channels, episodes: numbered, car, ambient: this.ambient.known?.value });
		const views = numbered
			.filter(({ kind }) => kind === 'pull')
			.map(episode =>
				viewPull(episode, channels, car, declared, {
					ambient: this.ambient.known?.value,
					lag: this.lag.found,
					pulse: this.pulse.form,
				}),
			);
		const chunk: Chunk = {
			...channels,
			span: [this.judgedTo, to],
			ticks,
			episodes: numbered,
			pulls: views,
			jumps: store.jumps,
			demand: this.demand.source,
			logged: new Set(store.channels),
			impossible,
			moving: this.moving,
			ambient: this.ambient.known?.value,
			pulse: this.pulse.form,
			warmth: this.warmth,
			car,
			declared,
		};
		for (const [, accumulator] of this.accumulators) accumulator.take(chunk);
		for (const view of views) this.measurePull(view);
		this.episodes.push(...numbered);
		this.judgedTo = to;
		store.dropBefore(to - overlap);
	}

	/** The episodes that are over, and up to where the log is judged with them: what ends near the end of a part may go on. */
	private closed(
		found: readonly Episode[],
		last: boolean,
	): { readonly judged: readonly Episode[]; readonly to: number } {
		const until = this.store.now;
		const open = (episode: Episode) => !last && episode.to > until - overlap / 2;
		const starts = found.filter(open).map(({ from }) => from);
		const kept = last ? until : Math.min(until - overlap, ...starts.map(from => from - 5));
		// An episode that fills all of what is kept is cut: memory is bounded.
		const to = last ? until : Math.max(kept, this.judgedTo + (until - this.judgedTo) / 2);
		const judged = found.filter(episode => episode.to > this.judgedTo && episode.to <= to && !open(episode));
		return { judged, to };
	}

	/** Episodes with whether the engine was warm, pulls with their number; lag is looked for at the ends of pulls. */
	private numbered(judged: readonly Episode[], channels: Channels): Episode[] {
		const coolant = channels.of('coolant_temp');
		const episodes = judged.map(episode => ({
			...episode,
			from: Math.max(episode.from, 0),
			warm: this.warmth.isWarm(coolant, episode.from),
		}));
		for (const { kind, from, to } of episodes)
			if (kind === 'pull')
				for (const bank of ['lambda_1', 'lambda_2']) this.lag.take(channels, bank, [from - 1, to + 1]);
		return episodes.map(episode => (episode.kind === 'pull' ? { ...episode, number: ++this.pullCount } : episode));
	}

	private measurePull(view: PullView): void {
		for (const { id, measure } of this.perPull) this.results.get(id)!.push(measure(view));
		this.points.push(pointsOf(view));
	}

	private takeDemand(until: number): void {
		const speed = this.store.of('engine_speed');
		for (const channel of ['pedal', 'throttle'] as const) {
			const fresh = within(this.store.of(channel), this.countedTo + 2e-9, until);
			this.demand.take(channel, whileRunning(fresh, speed, this.declared.running.speed));
		}
		this.countedTo = until;
	}
}
