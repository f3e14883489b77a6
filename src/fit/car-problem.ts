import type { State } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';
import type { Declared } from '../log/declared.ts';
import { CarAt, type Running } from './car-at.ts';
import { isInCharge } from './charge-sensor.ts';
import { fillingAt } from './filling.ts';
import { type Fact, type FitLog, type FitPoint, facts } from './fit-log.ts';
import { doubts, heldFacts, type Prepared } from './held-facts.ts';
import type { Problem, Seen } from './problem.ts';
import { breathing, leftOut, outsideUnknown, type Sensor, sensorErrors, sensors, type Term } from './terms.ts';

/** One thing that is compared: which channel, in which log, at which engine speed (null: of a pull or of idle). */
export interface Compared {
	readonly channel: Sensor | 'idle_rail';
	readonly log: number;
	readonly pull: number | null;
	readonly speed: number | null;
}

/** The problem of one car and its logs. */
export interface CarProblem extends Problem {
	/** The graph's own unknowns come first, then these. */
	readonly terms: readonly Term[];
	readonly car: CarAt;
	readonly compared: readonly Compared[];
	readonly facts: readonly { readonly fact: Fact; readonly log: number }[];
}

/** What is compared, in the order in which a point of a log is worked out. */
type Take = (
	channel: Compared['channel'],
	difference: number,
	deviation: number,
	at: FitPoint | { readonly pull: number } | null,
) => void;

/** Share of a pressure sensor's scale beyond which it is at its top, and V under the ceiling from which a meter is. */
const [topShare, topVolts] = [0.97, 0.2] as const;

export function carProblem(
	state: State,
	uncertain: readonly Uncertain[],
	logs: readonly FitLog[],
	declared: Pick<Declared, 'sensor_error'>,
): CarProblem {
	const valueAt = (id: string) => state.values[state.graph.slotOf.get(id)!];
	const asNumber = (id: string) => {
		const value = valueAt(id);
		return typeof value === 'number' ? value : Number.NaN;
	};
	const shownFacts = facts.filter(fact => logs.some(({ held }) => held[fact].length > 0));
	const car = new CarAt(state, uncertain, shownFacts);
	const errors = sensorErrors(declared);
	const base = car.sampler.dimensions;
	const placeOf = Object.fromEntries(sensors.map((channel, at) => [channel, base + at])) as Record<Sensor, number>;
	const shape = base + sensors.length;
	const outsideAt = shape + breathing.terms;
	const dimensions = outsideAt + logs.length;
	const terms: Term[] = [
		...sensors.map(channel => ({ id: `sensor: ${channel}`, channel })),
		...Array.from({ length: breathing.terms }, (_, at) => ({ id: `breathing ${at + 1}`, channel: null })),
		...logs.map((_, at) => ({ id: `outside air of log ${at + 1}`, channel: null })),
	];
	const boosted = valueAt('boost.kind') !== 'none';
	const place = valueAt('sensors.air_temp_place');
	const inCharge = isInCharge(state);
	const before = boosted && (place === 'before-compressor' || (place === 'in-air-meter' && !inCharge));
	const [mapTop, ceiling] = [asNumber('sensors.map_full_scale'), asNumber('sensors.meter_ceiling')];
	const best = asNumber('engine.peak_rpm');
	const manifoldReference = valueAt('fuel.reference') === 'manifold';
	const points = logs.flatMap(({ points }, log) =>
		points.flatMap((point, at): Prepared[] => {
			const pressure = point.read.manifold_pressure;
			const lambdas = (['lambda_1', 'lambda_2'] as const).filter(bank => point.read[bank]);
			if (!pressure || lambdas.length === 0 || !(best > 0) || pressure.value > topShare * mapTop) return [];
			const last = points[at + 1]?.pull !== point.pull;
			const judgesCharge = last && inCharge && point.read.charge_temp !== undefined;
			return [{ point, log, lambdas, judgesCharge, knowsRail: true }];
		}),
	);

	const off = (channel: Sensor, at: ArrayLike<number>): number => errors[channel] * at[placeOf[channel]]!;
	const outsideOf = (log: number, at: ArrayLike<number>): number => {
		const read = logs[log]!.outside;
		if (read !== null) return read - off('ambient_temp', at);
		return outsideUnknown.usual + outsideUnknown.deviation * at[outsideAt + log]!;
	};
	const runningAt = ({ point, log, lambdas }: Prepared, at: ArrayLike<number>): Running => {
		const charge = point.read.charge_temp;
		const pressure = point.read.manifold_pressure!;
		return {
			speed: point.speed,
			manifold: pressure.value / (1 + off('manifold_pressure', at)),
			ambient: logs[log]!.ambient,
			outside: before && charge ? charge.value - off('charge_temp', at) : outsideOf(log, at),
			lambda: lambdas.reduce((sum, bank) => sum + point.read[bank]!.value - off(bank, at), 0) / lambdas.length,
			filling: fillingAt(car, point.speed, best, at, shape),
		};
	};

	const center = new Float64Array(dimensions);
	car.moveTo(center);
	const prepared = points.map(one => {
		const rail = car.running(runningAt(one, center), () => {
			car.work('charge');
			car.work('air');
			return car.work('rail');
		});
		return { ...one, knowsRail: !Number.isNaN(rail) };
	});

	/** Compares one point; what is made there of power is handed back. */
	const comparePoint = (one: Prepared, at: ArrayLike<number>, wantsPower: boolean, take: Take): number => {
		const { read, speed } = one.point;
		const running = runningAt(one, at);
		const gauge = running.manifold - running.ambient;
		const pressure = read.manifold_pressure!;
		const ofPressure = pressure.deviation / pressure.value;
		return car.running(running, () => {
			const charge = read.charge_temp;
			if (charge && inCharge) {
				const true_ = charge.value - off('charge_temp', at);
				if (one.judgesCharge) take('charge_temp', true_ - car.work('charge'), leftOut.charge_temp, one.point);
				car.put('charge', true_);
			} else car.work('charge');
			const air = car.work('air');
			const ofRail = read.fuel_pressure;
			const set = car.work('railSet');
			const worked = car.work('rail');
			// Where a pump's curve ends nothing is proven of it: it is taken to hold there.
			const rail = Number.isNaN(worked) ? set : worked;
			if (one.knowsRail) {
				if (ofRail)
					take(
						'fuel_pressure',
						ofRail.value - off('fuel_pressure', at) - rail,
						Math.hypot(leftOut.fuel_pressure, ofRail.deviation),
						one.point,
					);
				car.put('across', rail - gauge);
			} else if (ofRail) car.put('across', ofRail.value - off('fuel_pressure', at) - gauge);
			else car.work('across');
			const pulse = read.injector_pulse ?? ofDuty(read.injector_duty, speed);
			if (pulse) {
				const lambda = one.lambdas.reduce((sum, bank) => sum + read[bank]!.deviation ** 2, 0);
				const ofLambda = Math.sqrt(lambda) / one.lambdas.length / running.lambda;
				take(
					'injector_pulse',
					pulse.value / (1 + off('injector_pulse', at)) - car.work('pulse'),
					pulse.value * Math.hypot(leftOut.injector_pulse, pulse.deviation / pulse.value, ofLambda, ofPressure),
					one.point,
				);
			}
			const power = wantsPower ? car.work('power') : 0;
			const [volts, flow] = [read.meter_volts, read.air_flow];
			if (volts && volts.value < ceiling - topVolts) {
				car.put('air', air * (1 + off('meter_volts', at)));
				take(
					'meter_volts',
					volts.value - car.work('volts'),
					Math.hypot(leftOut.meter_volts * volts.value, volts.deviation, (volts.value * ofPressure) / 2),
					one.point,
				);
			} else if (flow && !volts)
				take(
					'air_flow',
					flow.value / (1 + off('air_flow', at)) - air,
					Math.hypot(leftOut.air_flow * flow.value, flow.deviation, flow.value * ofPressure),
					one.point,
				);
			return power;
		});
	};

	/** Compares all, in one order. */
	const compareAll = (at: ArrayLike<number>, take: (log: number, ...rest: Parameters<Take>) => void): void => {
		for (const [log, { power, idle }] of logs.entries()) {
			const most = new Map<number, number>();
			for (const one of prepared) {
				if (one.log !== log) continue;
				const { pull } = one.point;
				const made = comparePoint(one, at, power.has(pull), (...rest) => take(log, ...rest));
				if (power.has(pull)) most.set(pull, Math.max(most.get(pull) ?? 0, made));
				const volts = one.point.read.pump_volts;
				if (volts)
					take(
						log,
						'pump_volts',
						volts.value / (1 + off('pump_volts', at)) - car.of('pumpVolts'),
						Math.hypot(leftOut.pump_volts, volts.deviation),
						one.point,
					);
			}
			for (const [pull, made] of most) {
				const seen = power.get(pull)! / (1 + off('road_load', at));
				take(log, 'road_load', seen - made, leftOut.road_load * power.get(pull)!, { pull });
			}
			if (idle) {
				const vacuum = manifoldReference ? idle.manifold / (1 + off('manifold_pressure', at)) - logs[log]!.ambient : 0;
				const expected = car.of('setPressure') + vacuum;
				take(log, 'idle_rail', idle.rail - off('fuel_pressure', at) - expected, leftOut.idle_rail, null);
			}
		}
	};

	// What the model cannot work out on its nominal values is not compared.
	const counts: boolean[] = [];
	const compared: Compared[] = [];
	car.moveTo(center);
	compareAll(center, (log, channel, difference, _deviation, at) => {
		counts.push(Number.isFinite(difference));
		if (counts.at(-1))
			compared.push({ channel, log, pull: at?.pull ?? null, speed: at && 'speed' in at ? at.speed : null });
	});
	const shown = heldFacts(state, car, logs, prepared);
	const seen: Seen = { residuals: new Float64Array(compared.length), margins: new Float64Array(shown.length) };
	return {
		dimensions,
		candidates: [...new Set(car.candidates), ...terms.map((_, at) => base + at)],
		doubts: shown.map(({ fact }) => doubts[fact].doubt),
		terms,
		car,
		compared,
		facts: shown,
		at(point) {
			car.moveTo(point);
			let [asked, place, whole] = [0, 0, true];
			compareAll(point, (_log, _channel, difference, deviation) => {
				if (!counts[asked++]) return;
				seen.residuals[place++] = difference / deviation;
				if (!Number.isFinite(difference)) whole = false;
			});
			for (const [index, { one, margin, fact }] of shown.entries()) {
				const by = margin(runningAt(one, point));
				seen.margins[index] = by / doubts[fact].soft;
				if (Number.isNaN(by)) whole = false;
			}
			return whole ? seen : null;
		},
	};
}

function ofDuty(duty: FitPoint['read'][string] | undefined, speed: number) {
	if (!duty) return undefined;
	const cycle = 120 / speed;
	return { value: duty.value * cycle, deviation: duty.deviation * cycle };
}
