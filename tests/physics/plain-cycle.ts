import type { ClosedCycle } from '../../src/physics/cylinder-gas.ts';

/**
 * The same cycle written a second time, for tests alone: temperature as the state, the first law as m cv dT, time as the
 * axis, the simplest midpoint step, very small. Shares no line with the real one.
 */
export function plainCycle(cycle: ClosedCycle, degrees: number, ron: number) {
	const { cylinder: c, burn, walls, gamma: fit } = cycle;
	const gasConstant = 287;
	const piston = (Math.PI * c.bore ** 2) / 4;
	const clearance = (piston * c.stroke) / (c.ratio - 1);
	const omega = (cycle.speed * Math.PI) / 30;
	const crank = c.stroke / 2;
	const volumeAt = (theta: number) => {
		const pin = crank * Math.cos(theta) + Math.sqrt(c.rod ** 2 - (crank * Math.sin(theta)) ** 2);
		return clearance + piston * (crank + c.rod - pin);
	};
	const gamma = (t: number) => Math.max(fit.least, fit.cold - fit.slope * t);
	const burnt = (degree: number) =>
		degree <= burn.start ? 0 : 1 - Math.exp(-5 * ((degree - burn.start) / burn.duration) ** 3);
	const degreeAt = (time: number) => cycle.shut + (time * omega * 180) / Math.PI;
	const v0 = volumeAt((cycle.shut * Math.PI) / 180);
	const mass = (cycle.pressure * v0) / (gasConstant * cycle.temperature);
	const pressureOf = (t: number, v: number) => (mass * gasConstant * t) / v;
	let spark: { p: number; v: number } | null = null;

	function temperatureRate(time: number, t: number) {
		const degree = degreeAt(time);
		const theta = (degree * Math.PI) / 180;
		const v = volumeAt(theta);
		const p = pressureOf(t, v);
		const dv = ((volumeAt(theta + 1e-6) - volumeAt(theta - 1e-6)) / 2e-6) * omega;
		const tick = 1e-5;
		const heat = (burn.heat * (burnt(degree + tick) - burnt(degree - tick)) * ((omega * 180) / Math.PI)) / (2 * tick);
		let film = walls.film as number;
		if (walls.film === 'woschni') {
			let gasSpeed = (2.28 * 2 * c.stroke * cycle.speed) / 60;
			if (spark !== null) {
				const over = p - spark.p * (spark.v / v) ** 1.3;
				const swept = piston * c.stroke;
				gasSpeed += 3.24e-3 * ((swept * cycle.temperature) / (cycle.pressure * v0)) * Math.max(0, over);
			}
			film = 3.26 * c.bore ** -0.2 * (p / 1000) ** 0.8 * t ** -0.55 * gasSpeed ** 0.8;
		}
		const liner = Math.PI * c.bore * (v / piston);
		const loss = film * (2 * piston + liner) * (t - walls.temperature);
		const cv = gasConstant / (gamma(t) - 1);
		return { dt: (heat - loss - p * dv) / (mass * cv), loss, power: p * dv, p };
	}

	const step = (degrees * Math.PI) / 180 / omega;
	const steps = Math.round((cycle.opens - cycle.shut) / degrees);
	let t = cycle.temperature;
	let endGas = cycle.temperature;
	let [work, wallHeat, knock, peakPressure, peakAngle] = [0, 0, 0, 0, 0];
	for (let i = 0; i < steps; i++) {
		const time = i * step;
		const degree = degreeAt(time);
		if (spark === null && degree >= burn.start - 1e-9) {
			const v = volumeAt((degree * Math.PI) / 180);
			spark = { p: pressureOf(t, v), v };
		}
		const first = temperatureRate(time, t);
		const middle = temperatureRate(time + step / 2, t + (step / 2) * first.dt);
		t += step * middle.dt;
		work += step * middle.power;
		wallHeat += step * middle.loss;
		const after = pressureOf(t, volumeAt((degreeAt(time + step) * Math.PI) / 180));
		if (burnt(degree + degrees / 2) < 0.9) {
			const tau = 0.01768 * (ron / 100) ** 3.402 * (middle.p / 101325) ** -1.7 * Math.exp(3800 / endGas);
			knock += step / tau;
		}
		endGas *= (after / first.p) ** (1 - 1 / gamma(endGas));
		if (after > peakPressure) {
			peakPressure = after;
			peakAngle = degree + degrees;
		}
	}
	return { work, wallHeat, knock, peakPressure, peakAngle };
}
