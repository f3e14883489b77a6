import type { CarModel, OperatingPoint } from './car-model.ts';
import { fillingAt } from './filling.ts';
import type { FitLog } from './fit-log.ts';
import type { Prepared } from './prepared-points.ts';
import { ambientPrior, fillingShape, type Sensor, type sensorErrors, sensors, type Term } from './terms.ts';

/** The operating points of logs corrected by the sensor errors at a point of the unknowns. */
export class Conditions {
	/** The graph's own unknowns come first, then these: sensors, terms of shape, air outside by log. */
	readonly terms: readonly Term[];
	readonly dimensions: number;
	/** By sensor, how far it is off at the present point: a share, or a difference in its unit. */
	readonly off: Record<Sensor, number>;
	private readonly errors: Readonly<Record<Sensor, number>>;
	private readonly logs: readonly FitLog[];
	private readonly car: CarModel;
	/** Whether charge temperature is read before the compressor: then it is that of the air outside. */
	private readonly readsOutside: boolean;
	private readonly first: number;
	private readonly shape: number;
	private readonly outsideAt: number;
	private at: ArrayLike<number> = [];

	constructor(car: CarModel, logs: readonly FitLog[], errors: ReturnType<typeof sensorErrors>, readsOutside: boolean) {
		this.car = car;
		this.logs = logs;
		this.errors = errors;
		this.readsOutside = readsOutside;
		this.off = { ...errors };
		this.first = car.sampler.dimensions;
		this.shape = this.first + sensors.length;
		this.outsideAt = this.shape + fillingShape.terms;
		this.terms = [
			...sensors.map(channel => ({ id: `sensor: ${channel}`, channel })),
			...Array.from({ length: fillingShape.terms }, (_, at) => ({ id: `breathing ${at + 1}`, channel: null })),
			...logs.map((_, at) => ({ id: `outside air of log ${at + 1}`, channel: null })),
		];
		this.dimensions = this.first + this.terms.length;
	}

	/** Sets the unknowns, the car's own as well. */
	moveTo(at: ArrayLike<number>): void {
		this.at = at;
		this.car.moveTo(at);
		for (let index = 0; index < sensors.length; index++) {
			const sensor = sensors[index]!;
			this.off[sensor] = this.errors[sensor] * at[this.first + index]!;
		}
	}

	runningAt({ point: { read }, place, log, lambdas }: Prepared): OperatingPoint {
		const { off } = this;
		const charge = read.charge_temp;
		let lambda = 0;
		for (const bank of lambdas) lambda = lambda + read[bank]!.value - off[bank];
		return {
			speed: place.speed,
			manifold: read.manifold_pressure!.value / (1 + off.manifold_pressure),
			ambient: this.logs[log]!.ambient,
			outside: this.readsOutside && charge ? charge.value - off.charge_temp : this.outsideOf(log),
			lambda: lambda / lambdas.length,
			filling: fillingAt(this.car, place, this.at, this.shape),
		};
	}

	private outsideOf(log: number): number {
		const read = this.logs[log]!.outside;
		if (read !== null) return read - this.off.ambient_temp;
		return ambientPrior.usual + ambientPrior.deviation * this.at[this.outsideAt + log]!;
	}
}
