import type { Kind } from '../units/kinds.ts';

/**
 * What rules/episodes.yaml declares: by what each thing that an engine does is known, and how far a sensor may be off.
 * The kind of each figure; the values are in canonical units.
 */
export const declaredKinds = {
	running: { speed: 'rotation', gap: 'time' },
	crank: { slowest: 'rotation', fastest: 'rotation' },
	demand: { least: 'ratio', of_span: 'ratio', throttle_span: 'ratio', of_ambient: 'ratio' },
	pull: { time: 'time', rise: 'rotation', drop: 'rotation', gear_change: 'ratio' },
	full: { after: 'time', of_peak: 'ratio', cut: 'ratio', limiter: 'rotation' },
	sustained: { time: 'time', readings: 'count' },
	idle: { demand: 'ratio', standing: 'velocity', before: 'time', after: 'time', time: 'time' },
	cruise: { time: 'time', speed: 'ratio', pressure: 'pressure', moving: 'velocity' },
	overrun: { speed: 'rotation', time: 'time' },
	warm: { coolant: 'temperature', after: 'time', at_once: 'temperature' },
	lag: { most: 'time', step: 'time', fit: 'ratio' },
	sensor_error: {
		lambda: 'ratio',
		lambda_apart: 'ratio',
		pressure: 'pressure',
		manifold: 'ratio',
		meter: 'ratio',
		temperature: 'temperature-difference',
		pulse: 'ratio',
		volts: 'ratio',
		volts_apart: 'ratio',
	},
} as const satisfies Readonly<Record<string, Readonly<Record<string, Kind>>>>;

/** The figures of rules/episodes.yaml, in canonical units. */
export type Declared = {
	readonly [Group in keyof typeof declaredKinds]: {
		readonly [Name in keyof (typeof declaredKinds)[Group]]: number;
	};
};
