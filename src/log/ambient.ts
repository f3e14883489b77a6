import { type Car, numberOf } from './car.ts';
import type { Declared } from './declared.ts';
import { filtered, noReadings, type Readings } from './series.ts';
import { median, minOf } from './statistics.ts';
import { type Channels, heldAtEach } from './ticks.ts';

/** The pressure of the air outside: as logged, else the manifold's with the engine still, else that of the sheet's altitude. */
export class Ambient {
	private value: number | undefined;
	from: 'ambient_pressure' | 'manifold_pressure' | 'build.altitude' | null = null;
	private readonly car: Car;

	constructor(car: Car) {
		this.car = car;
	}

	/** Keeps looking until a sensor has shown it; what was found once stays. */
	take({ of }: Channels, { crank }: Declared): void {
		if (this.from !== null && this.from !== 'build.altitude') return;
		const logged = median(of('ambient_pressure').value);
		const still = median(whileStill(of('manifold_pressure'), of('engine_speed'), crank.slowest).value);
		const altitude = numberOf(this.car, 'air.ambient_pressure');
		if (Number.isFinite(logged)) this.found(logged, 'ambient_pressure');
		else if (Number.isFinite(still)) this.found(still, 'manifold_pressure');
		else if (altitude !== undefined) this.found(altitude, 'build.altitude');
	}

	private found(value: number, from: Ambient['from']): void {
		this.value = value;
		this.from = from;
	}

	get known(): { value: number; from: Ambient['from'] } | null {
		return this.value === undefined ? null : { value: this.value, from: this.from };
	}
}

/** Readings taken while engine speed stood at nothing for a second: the manifold has filled by then. */
function whileStill(readings: Readings, speed: Readings, slowest: number): Readings {
	if (!(minOf(speed.value, slowest) < slowest)) return noReadings;
	const [now, before] = [0, 1].map(ago =>
		heldAtEach(
			speed,
			readings.time.map(time => time - ago),
			5,
		),
	);
	return filtered(readings, index => now![index]! < slowest && before![index]! < slowest);
}
