import type { ClosedCycle } from '../../src/physics/closed-cycle.ts';
import type { Gas } from '../../src/physics/gas.ts';

/**
 * The same cycle written a second time, for tests alone: enthalpies as the state of both zones, time as the axis, and each
 * small step closed by trial, on the pressure at which the zones fill the cylinder. Shares no line with the real one.
 */
export function plainCycle(cycle: ClosedCycle, degrees: number, ron: number) {
	const { cylinder: c, burn, walls, charge } = cycle;
	const piston = (Math.PI * c.bore ** 2) / 4;
	const clearance = (piston * c.stroke) / (c.ratio - 1);
	const omega = (cycle.speed * Math.PI) / 30;
	const crank = c.stroke / 2;
	const volumeAt = (degree: number) => {
		const theta = (degree * Math.PI) / 180;
		const pin = crank * Math.cos(theta) + Math.sqrt(c.rod ** 2 - (crank * Math.sin(theta)) ** 2);
		return clearance + piston * (crank + c.rod - pin);
	};
	const v0 = volumeAt(cycle.shut);
	const mass = (cycle.pressure * v0) / (charge.unburnt.constant * cycle.temperature);
	const burntShare = (degree: number) =>
		degree <= burn.start ? 0 : 1 - Math.exp(-5 * Math.min(1.5, (degree - burn.start) / burn.duration) ** 3);
	const seconds = (degrees * Math.PI) / 180 / omega;
	const unburnt = { mass, kelvin: cycle.temperature, heat: enthalpy(charge.unburnt, cycle.temperature) };
	const burnt = { mass: 0, kelvin: 2500, heat: 0 };
	let pressure = cycle.pressure;
	let core = cycle.temperature;
	let spark: { p: number; v: number } | null = null;
	let [work, wallHeat, knock, peakPressure, peakAngle] = [0, 0, 0, 0, 0];
	const steps = Math.round((cycle.opens - cycle.shut) / degrees);

	for (let i = 0; i < steps; i++) {
		const [from, to] = [cycle.shut + i * degrees, cycle.shut + (i + 1) * degrees];
		const [v1, v2] = [volumeAt(from), volumeAt(to)];
		if (spark === null && from >= burn.start - 1e-9) spark = { p: pressure, v: v1 };
		const lossAt = (p: number, v: number, kelvin: number, own: number) => {
			const mean = (p * v) / (mass * charge.unburnt.constant);
			let film = walls.film as number;
			if (walls.film === 'woschni') {
				const over = spark === null ? 0 : Math.max(0, p - spark.p * (spark.v / v) ** 1.3);
				const stirring = 3.24e-3 * ((piston * c.stroke * cycle.temperature) / (cycle.pressure * v0)) * over;
				const gasSpeed = (2.28 * 2 * c.stroke * cycle.speed) / 60 + stirring;
				film = 3.26 * c.bore ** -0.2 * (p / 1000) ** 0.8 * mean ** -0.55 * gasSpeed ** 0.8;
			}
			const flow = film * (2 * piston + Math.PI * c.bore * (v / piston)) * seconds;
			const all = flow * (mean - walls.temperature);
			return { all, own: burnt.mass > 0 ? flow * (own / v) * (kelvin - walls.temperature) : all };
		};
		const moved = mass * (burntShare(to) - burntShare(from));
		const [own1, other1] = [volumeOf(unburnt, charge.unburnt, pressure), volumeOf(burnt, charge.burnt, pressure)];
		const left = unburnt.mass - moved;
		// Twice: the second time with losses, and the gas handed over, at the middle of the step.
		let p2 = pressure * (v1 / v2) ** 1.3;
		let [kelvin2, hot2, loss] = [unburnt.kelvin, burnt.kelvin, 0];
		let [heat2, hotHeat2] = [unburnt.heat, burnt.heat];
		for (let round = 0; round < 3; round++) {
			const middle = [(pressure + p2) / 2, (v1 + v2) / 2, (unburnt.kelvin + kelvin2) / 2] as const;
			const ownMiddle = ((unburnt.mass + left) / 2) * charge.unburnt.constant * (middle[2] / middle[0]);
			const lost = lossAt(middle[0], middle[1], middle[2], ownMiddle);
			loss = lost.all;
			const handed = (unburnt.heat + heat2) / 2 + burn.heat / mass;
			const gap = (p: number) => {
				const specific = own1 / unburnt.mass;
				let v = specific;
				for (let again = 0; again < 3; again++) {
					heat2 = unburnt.heat + ((specific + v) / 2) * (p - pressure) - (left > 1e-6 * mass ? lost.own / left : 0);
					kelvin2 = kelvinOf(charge.unburnt, heat2, kelvin2);
					v = (charge.unburnt.constant * kelvin2) / p;
				}
				const all = burnt.mass + moved;
				if (all === 0) return left * v - v2;
				let other = other1;
				for (let again = 0; again < 3; again++) {
					const squeezed = ((other1 + other) / 2) * (p - pressure);
					hotHeat2 = (burnt.mass * burnt.heat + moved * handed + squeezed - (lost.all - lost.own)) / all;
					hot2 = kelvinOf(charge.burnt, hotHeat2, hot2);
					other = (all * charge.burnt.constant * hot2) / p;
				}
				return left * v + other - v2;
			};
			let [a, b] = [p2, p2 * 1.001];
			let [ga, gb] = [gap(a), gap(b)];
			for (let n = 0; n < 20 && Math.abs(gb) > 1e-13 * v2 && gb !== ga; n++) {
				const next = b - (gb * (b - a)) / (gb - ga);
				[a, ga, b] = [b, gb, next];
				gb = gap(b);
			}
			p2 = b;
		}
		const middle = (pressure + p2) / 2;
		if (burntShare((from + to) / 2) < 0.9) {
			knock += seconds / (0.01768 * (ron / 100) ** 3.402 * (middle / 101325) ** -1.7 * Math.exp(3800 / core));
		}
		const heat = enthalpy(charge.unburnt, core + 0.5) - enthalpy(charge.unburnt, core - 0.5);
		core *= (p2 / pressure) ** (charge.unburnt.constant / heat);
		work += middle * (v2 - v1);
		wallHeat += loss;
		Object.assign(unburnt, { mass: left, kelvin: kelvin2, heat: heat2 });
		Object.assign(burnt, { mass: burnt.mass + moved, kelvin: hot2, heat: hotHeat2 });
		pressure = p2;
		if (pressure > peakPressure) [peakPressure, peakAngle] = [pressure, to];
	}
	return { work, wallHeat, knock, peakPressure, peakAngle };
}

const volumeOf = (zone: { mass: number; kelvin: number }, gas: Gas, pressure: number) =>
	(zone.mass * gas.constant * zone.kelvin) / pressure;

/** J/kg, the integral of the heat term by term. */
function enthalpy(gas: Gas, kelvin: number): number {
	const at = (t: number) =>
		gas.zero - gas.back / t + gas.c0 * t + (gas.c1 / 2) * t * t + (gas.c2 / 3) * t * t * t + rest(t);
	const rest = (t: number) => (gas.c3 / 4) * t ** 4 + (gas.c4 / 5) * t ** 5;
	const held = Math.max(gas.from, Math.min(gas.to, kelvin));
	if (held === kelvin) return at(kelvin);
	const heat = gas.c0 + gas.c1 * held + gas.c2 * held ** 2 + gas.c3 * held ** 3 + gas.c4 * held ** 4;
	return at(held) + (heat + gas.back / held ** 2) * (kelvin - held);
}

function kelvinOf(gas: Gas, target: number, guess: number): number {
	let kelvin = guess;
	for (let n = 0; n < 30; n++) {
		const slope = enthalpy(gas, kelvin + 0.5) - enthalpy(gas, kelvin - 0.5);
		const step = (target - enthalpy(gas, kelvin)) / slope;
		kelvin += step;
		if (Math.abs(step) < 1e-9 * Math.abs(kelvin)) break;
	}
	return kelvin;
}
