import type { Assessment } from '../audit/assess.ts';
import type { Finding } from '../audit/audit.ts';
import type { ReadPin } from '../plugs/half.ts';
import { meterCard } from '../plugs/meter.ts';
import type { Plugs } from '../plugs/parts.ts';
import { planOf } from '../plugs/plan.ts';
import { addedWire, remedy } from '../plugs/remedy.ts';
import type { Row } from '../plugs/rows.ts';

/** The findings of an audit that are about plugs. */
export const plugFindings = ({ audit }: Pick<Assessment, 'audit'>): Finding[] =>
	audit.findings.filter(({ rule, verdict }) => rule.startsWith('pins.') && verdict !== 'does-not-apply');

/** The plan as other programs read it. Lengths in m, gauges in AWG (0000 is -3), fuses in A. */
export function pinsJson(assessment: Assessment): Record<string, unknown> {
	const { audit, plugs } = assessment;
	const plan = plugs && planOf(plugs.reading);
	return {
		format: 'swap-audit/pins',
		version: 1,
		sheet: audit.sheet,
		date: audit.date,
		tool: audit.tool,
		rules: audit.rules,
		plugs: plugs ? plugsJson(plugs) : [],
		counts: plan?.counts ?? { join: 0, move: 0, add: 0, insulate: 0, unknown: 0 },
		findings: plugFindings(assessment),
		meter: plugs ? meterCard(plugs.reading) : [],
		comfort: plan?.comfort.map(({ id }) => id) ?? [],
		wire: plan?.wire ?? [],
		fuses: plan?.fuses ?? [],
		terminals: plan?.terminals ?? 0,
	};
}

function plugsJson(plugs: Plugs): unknown[] {
	const { pairs, alone } = plugs.reading;
	return [
		...pairs.map(({ left, right, by, mirrored, rows }) => ({
			plug: left.plug,
			mates: right.plug,
			mates_by: by,
			mirrored: mirrored !== null,
			rows: rows.map(row => rowJson(row, plugs)),
		})),
		...alone.map(({ plug, half, raw, pins }) => ({
			plug,
			mates: raw.mates ?? null,
			mates_by: raw.mates_by ?? 'pin',
			mirrored: false,
			rows: pins.map(pin => ({
				pin: pin.raw.pin.trim(),
				engine: null,
				car: null,
				controller: null,
				[half]: pinJson(pin),
				circuit: null,
				sorts: [pin.sort],
				meeting: 'unknown',
				to_pin: null,
				do: 'find out',
				add: null,
			})),
		})),
	];
}

function rowJson(row: Row, { reading, sizes }: Plugs): Record<string, unknown> {
	const { left, right, pair, met, pin, toPin } = row;
	const given = [left, right].filter(half => half !== null);
	const wire = addedWire(row, reading.answered);
	return {
		pin,
		engine: null,
		car: null,
		controller: null,
		[pair.left.half]: left && pinJson(left),
		[pair.right.half]: right && pinJson(right),
		circuit: left?.circuit && left.circuit === right?.circuit ? left.circuit.id : null,
		sorts: given.map(({ sort }) => sort),
		meeting: met.meeting,
		to_pin: toPin,
		do: remedy(row, reading.answered, sizes),
		add: wire,
		why: met.why || null,
		if_live: met.ifLive,
		harm: ['burns', 'kills', 'wrong'].includes(met.meeting) ? met.harm : null,
	};
}

const pinJson = ({ raw, circuit, recognized }: ReadPin): Record<string, unknown> => ({
	pin: raw.pin.trim(),
	wire: raw.wire ?? null,
	circuit: circuit?.id ?? (recognized.is === 'empty' || recognized.is === 'spare' ? recognized.is : null),
	text: raw.circuit ?? '',
	gauge: raw.gauge ?? null,
	joined: raw.joined ?? false,
	known: raw.known ?? null,
	note: raw.note ?? '',
});
