import type { CarModel } from './car-model.ts';
import type { Conditions } from './conditions.ts';
import type { FitLog } from './fit-log.ts';
import type { Prepared } from './prepared-points.ts';
import { modelDiscrepancy, type Sensor } from './terms.ts';

/** One thing that is compared: which channel, in which log, at which engine speed (null: of a pull or of idle). */
export interface Compared {
	readonly channel: Sensor | 'idle_rail';
	readonly log: number;
	readonly pull: number | null;
	readonly speed: number | null;
}

/** How a car is read, as far as that decides what is compared. */
export interface Instruments {
	/** The charge temperature of the logs is that of what the engine draws in. */
	readonly inCharge: boolean;
	/** V that a meter is read up to; NaN: not known. */
	readonly ceiling: number;
	/** The fuel pressure is held over that of the manifold. */
	readonly manifoldReference: boolean;
}

/** V under the ceiling from which a meter counts as saturated. */
const saturationBand = 0.2;

/** Readings of the logs against what the model says there: always the same ones, in the same order. */
export class Comparison {
	readonly compared: Compared[] = [];
	/** Of each of those, as of the last time: the reading less what the model says, and one standard deviation of that. */
	readonly differences: number[] = [];
	readonly deviations: number[] = [];
	private taken = 0;
	private readonly car: CarModel;
	private readonly conditions: Conditions;
	private readonly logs: readonly FitLog[];
	private readonly points: readonly Prepared[];
	private readonly instruments: Instruments;

	constructor(
		car: CarModel,
		conditions: Conditions,
		logs: readonly FitLog[],
		points: readonly Prepared[],
		instruments: Instruments,
	) {
		this.car = car;
		this.conditions = conditions;
		this.logs = logs;
		this.points = points;
		this.instruments = instruments;
	}

	/** Compares all logs under the present conditions. */
	run(): void {
		this.taken = 0;
		for (let log = 0; log < this.logs.length; log++) this.compareLog(log);
	}

	private compareLog(log: number): void {
		const { car, conditions } = this;
		const { off } = conditions;
		const { power, idle, ambient } = this.logs[log]!;
		const most = new Map<number, number>();
		for (const one of this.points) {
			if (one.log !== log) continue;
			const { pull, speed, read } = one.point;
			const made = this.comparePoint(one, power.has(pull));
			if (power.has(pull)) most.set(pull, Math.max(most.get(pull) ?? 0, made));
			const volts = read.pump_volts;
			if (volts) {
				const difference = volts.value / (1 + off.pump_volts) - car.of('pumpVolts');
				this.take('pump_volts', difference, one.ofPumpVolts, log, pull, speed);
			}
		}
		for (const [pull, made] of most) {
			const seen = power.get(pull)! / (1 + off.road_load);
			this.take('road_load', seen - made, modelDiscrepancy.road_load * power.get(pull)!, log, pull, null);
		}
		if (idle) {
			const manifold = idle.manifold / (1 + off.manifold_pressure);
			const expected = car.of('setPressure') + (this.instruments.manifoldReference ? manifold - ambient : 0);
			this.take('idle_rail', idle.rail - off.fuel_pressure - expected, modelDiscrepancy.idle_rail, log, null, null);
		}
	}

	/** Compares one point; returns the power that the model has there, W, or 0. */
	private comparePoint(one: Prepared, wantsPower: boolean): number {
		const { car, conditions } = this;
		const { off } = conditions;
		const { inCharge, ceiling } = this.instruments;
		const { log, pulse } = one;
		const { read, pull, speed } = one.point;
		const running = conditions.runningAt(one);
		const gauge = running.manifold - running.ambient;
		return car.running(running, () => {
			const charge = read.charge_temp;
			if (charge && inCharge) {
				const actual = charge.value - off.charge_temp;
				if (one.judgesCharge)
					this.take('charge_temp', actual - car.compute('charge'), modelDiscrepancy.charge_temp, log, pull, speed);
				car.override('charge', actual);
			} else car.compute('charge');
			const air = car.compute('air');
			const set = car.compute('railSet');
			const worked = car.compute('rail');
			// Beyond the end of a pump's curve the rail is not known: it is taken to hold its set point.
			const rail = Number.isNaN(worked) ? set : worked;
			const seen = read.fuel_pressure;
			if (one.knowsRail) {
				if (seen) this.take('fuel_pressure', seen.value - off.fuel_pressure - rail, one.ofRail, log, pull, speed);
				car.override('across', rail - gauge);
			} else if (seen) car.override('across', seen.value - off.fuel_pressure - gauge);
			else car.compute('across');
			if (pulse) {
				const difference = pulse.value / (1 + off.injector_pulse) - car.compute('pulse');
				const shares = [pulse.deviation / pulse.value, one.ofLambda / running.lambda, one.ofPressure] as const;
				const deviation = pulse.value * Math.hypot(modelDiscrepancy.injector_pulse, ...shares);
				this.take('injector_pulse', difference, deviation, log, pull, speed);
			}
			const power = wantsPower ? car.compute('power') : 0;
			const [volts, flow] = [read.meter_volts, read.air_flow];
			if (volts && volts.value < ceiling - saturationBand) {
				car.override('air', air * (1 + off.meter_volts));
				this.take('meter_volts', volts.value - car.compute('volts'), one.ofVolts, log, pull, speed);
			} else if (flow && !volts)
				this.take('air_flow', flow.value / (1 + off.air_flow) - air, one.ofFlow, log, pull, speed);
			return power;
		});
	}

	private take(
		channel: Compared['channel'],
		difference: number,
		deviation: number,
		log: number,
		pull: number | null,
		speed: number | null,
	): void {
		const place = this.taken++;
		if (place === this.compared.length) this.compared.push({ channel, log, pull, speed });
		this.differences[place] = difference;
		this.deviations[place] = deviation;
	}
}
