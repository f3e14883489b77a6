import { type End, type MeterState, meterStates, type Reads } from './circuit.ts';
import type { ReadHalf, ReadPin } from './half.ts';
import type { Reading } from './reading.ts';

/** A line of the meter card. The plugs are apart but in the last state. */
export interface MeterLine {
	readonly plug: string;
	readonly half: string;
	readonly pin: string;
	readonly circuit: string;
	readonly state: MeterState;
	readonly expect: string;
	readonly otherwise: string;
}

/**
 * What a meter shows at each pin, looking into the harness: at the half that leads to the circuit's first end, so that it is
 * the sensor, the load or the feed that is read. Never at the controller's own half, never at an airbag.
 */
export function meterCard({ halves, vocabulary }: Reading): MeterLine[] {
	const lines = halves
		.filter(({ half }) => half !== 'controller')
		.flatMap(half =>
			half.pins.flatMap(pin =>
				pinLines(pin, half, halves, { ...vocabulary.sorts[pin.sort]?.reads, ...pin.circuit?.reads }),
			),
		);
	return meterStates.flatMap(state => lines.filter(line => line.state === state));
}

function pinLines(pin: ReadPin, half: ReadHalf, halves: readonly ReadHalf[], reads: Reads): MeterLine[] {
	const { circuit, airbag } = pin;
	if (!circuit || airbag || !leadsTo(half, circuit.ends[0], halves)) return [];
	return meterStates.flatMap(state => {
		const read = reads[state];
		if (!read) return [];
		const [expect, otherwise] = read;
		// An ohmmeter on a live circuit reads nonsense, or is gone.
		const ohms = state === 'key-off' && /\bk?ohm\b|\bopen\b/.test(expect) ? ' (battery off)' : '';
		return [
			{
				plug: half.plug,
				half: half.half,
				pin: pin.raw.pin.trim(),
				circuit: circuit.title,
				state,
				expect: `${expect}${ohms}`,
				otherwise,
			},
		];
	});
}

/** Whether the wires behind a half lead to an end of a circuit. */
function leadsTo({ half, raw }: ReadHalf, end: End, halves: readonly ReadHalf[]): boolean {
	const own: readonly End[] = half === 'engine' ? ['engine', 'gearbox'] : ['car', 'tank'];
	if (own.includes(end)) return true;
	// The half at the controller leads to everything.
	return (
		halves.some(
			other =>
				other.half === 'controller' &&
				(other.raw.mates === raw.plug || raw.mates === other.raw.plug || other.plug === raw.plug),
		) && end !== 'controller'
	);
}
