import type { Car } from './car.ts';
import type { Declared } from './declared.ts';
import type { Episode } from './episodes.ts';
import { endOf, fullLoadPart } from './full-load-part.ts';
import type { Interval, PullView } from './pull.ts';
import { heldAt, within } from './series.ts';
import type { Channels } from './ticks.ts';

/** A pull as its quantities look at it. */
export function viewPull(
	episode: Episode,
	channels: Channels,
	car: Car,
	declared: Declared,
	seen: Pick<PullView, 'ambient' | 'lag' | 'pulse'>,
): PullView {
	const whole: Interval = [episode.from, episode.to];
	const boosted = isBoosted(car, channels, whole);
	const view = {
		episode,
		car,
		declared,
		boosted,
		...seen,
		whole,
		of: (id: string) => channels.of(id),
		in: (id: string, [from, to]: Interval = whole) => within(channels.of(id), from, to),
		speedAt: (time: number) => heldAt(channels.of('engine_speed'), time),
	};
	const ending = { ...view, end: endOf(view) };
	return { ...ending, full: fullLoadPart(ending) };
}

/** As the sheet says, else by a boost that no engine has by itself: 10 kPa. */
function isBoosted(car: Car, { of }: Channels, [from, to]: Interval): boolean | undefined {
	const kind = car.value('boost.kind');
	if (typeof kind === 'string') return kind !== 'none';
	const boost = within(of('boost'), from, to).value;
	return boost.length === 0 ? undefined : boost.some(pressure => pressure > 10_000);
}
