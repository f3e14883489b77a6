import { chance } from './chance.ts';

/** What can be wrong with the car or its instruments; each is switched on by its own figure. */
export interface Faults {
	/** lambda leaner than meant over 4200 rpm at full. */
	readonly leanOnTop?: number;
	/** lambda leaner than meant while boost builds. */
	readonly leanBuilding?: number;
	/** lambda of bank 2 over bank 1. */
	readonly banksApart?: number;
	/** Pa that the rail falls by the end of a pull. */
	readonly railFalls?: number;
	/** V lost between battery and pump at full. */
	readonly pumpLoss?: number;
	/** deg taken out for knock, and in how many readings. */
	readonly knock?: { readonly retard: number; readonly readings: number; readonly pulls?: number };
	/** deg more advance than meant. */
	readonly advance?: number;
	/** Pa over the target, and Pa that boost creeps up or falls from 3500 rpm to the end. */
	readonly overTarget?: number;
	readonly creep?: number;
	readonly fade?: number;
	/** K over the usual charge temperature at full. */
	readonly hotCharge?: number;
	/** Share by which engine speed runs away from road speed in the second half of a pull. */
	readonly slip?: number;
	/** How many stumbles of 0.15 s in a pull. */
	readonly stumbles?: number;
	/** rpm at which the pull ends. */
	readonly lastSpeed?: number;
	/** V of the throttle sensor wide open, V at which the meter stops rising, full scale of the manifold sensor in Pa abs. */
	readonly throttleOpen?: number;
	readonly meterTop?: number;
	readonly manifoldTop?: number;
	/** Pa that the manifold sensor is off. */
	readonly manifoldOff?: number;
	/** Share of oil pressure lost over 4000 rpm, and Pa at idle and of the pump as a share of the usual. */
	readonly oilDrops?: number;
	readonly oilPressure?: number;
	/** Share that the road speed shown is off. */
	readonly speedOff?: number;
	/** True injector flow over the sheet's. */
	readonly injectorFlow?: number;
	/** rpm of hunting at idle, and the trims of the banks at idle and cruise. */
	readonly hunting?: number;
	readonly idleTrim?: readonly [number, number];
	readonly cruiseTrim?: readonly [number, number];
	/** V while running; V and rpm while cranking. */
	readonly charging?: number;
	readonly crankVolts?: number;
	readonly crankSpeed?: number;
	/** K: where coolant settles, jumps of it, and what it reads cold. */
	readonly coolant?: number;
	readonly coolantJumps?: number;
	readonly coldOff?: number;
	/** The row at which the clock goes back a minute. */
	readonly clockBack?: boolean;
	/** Channels that stand at one value, and those that are not there. */
	readonly dead?: readonly string[];
	readonly without?: readonly string[];
}

export interface Driven {
	readonly boosted: boolean;
	readonly seed: number;
	/** Rows a second; every channel has a new value in every row, or one channel a row by turns. */
	readonly rate: number;
	readonly polled: boolean;
	readonly pulls: number;
	/** Starts stone cold at this many K; else warm. */
	readonly cold?: number;
	/** s of cruise, and of the idle after the start and after the cruise. */
	readonly cruise: number;
	readonly idle: number;
	/** How the controller logs the pulse: with the dead time of 1 ms in it, whole or one of two halves. */
	readonly pulse: { readonly dead: boolean; readonly perCycle: 1 | 2 };
	readonly faults: Faults;
}

const usual: Driven = {
	boosted: true,
	seed: 1,
	rate: 25,
	polled: false,
	pulls: 2,
	cruise: 60,
	idle: 40,
	pulse: { dead: true, perCycle: 1 },
	faults: {},
};

/** Physical constants and the car: the boosted or unboosted build of rules/examples, sound. */
const psi = 6894.757;
const ambient = 99_500;
const outside = 293;
const displacement = 8 * (Math.PI / 4) * 0.1016 ** 2 * 0.08255;
const stoichiometric = 14.1;
/** rpm per m/s in each gear. */
export const gearing = (gear: number): number =>
	(3.5 * [2.95, 1.95, 1.4, 1.0, 0.8][gear - 1]! * 60) / (Math.PI * 0.6604);

/** What was true in each pull. */
export interface PullTruth {
	from: number;
	to: number;
	boostPeak: number;
	lambdaLeanest: number;
	railLowest: number;
	speedHighest: number;
}

export interface Drive {
	/** Row by row, s and by channel in canonical units; NaN where a cell is empty. */
	readonly time: Float64Array;
	readonly channels: ReadonlyMap<string, Float64Array>;
	readonly pulls: readonly PullTruth[];
}

interface State {
	t: number;
	rpm: number;
	v: number;
	gear: number;
	pedal: number;
	boost: number;
	manifold: number;
	coolant: number;
	charge: number;
	ran: number;
	lambda: number;
	running: boolean;
}

/** s of one step. */
const step = 0.01;

/**
 * A drive in a simulated car: key on, crank, idle, away, cruise, overrun, idle, pulls in third gear, idle, off. Truth is
 * computed every 10 ms; sensors are late, noisy and coarse; the logger writes rows.
 */
export function simulateDrive(given: Partial<Driven> = {}): Drive {
	const driven = { ...usual, ...given };
	const { faults, boosted } = driven;
	const random = chance(driven.seed);
	const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
	const vary = (value: number, share: number) => value * (1 + share * (2 * random() - 1));
	// What differs from one sound car and one logger to the next.
	const late = vary(0.2, 0.5);
	const lambdaFull = boosted ? 0.8 : 0.87;
	const rpmStep = [1, 5, 10][Math.floor(random() * 3)]!;
	const pressureStep = [100, 500, 1000][Math.floor(random() * 3)]!;
	const idleAt = vary(780, 0.05);
	const charging = faults.charging ?? vary(14.2, 0.015);
	const target = boosted ? 8 * psi : 0;
	const state: State = {
		t: 0,
		rpm: 0,
		v: 0,
		gear: 0,
		pedal: 0.14,
		boost: 0,
		manifold: ambient,
		coolant: driven.cold ?? 361,
		charge: driven.cold ?? outside + 8,
		ran: 0,
		lambda: 1,
		running: false,
	};
	const rows: number[][] = [];
	const ids = channelsOf(driven);
	const pulls: PullTruth[] = [];
	const history: number[] = [];
	let next = 0;
	let turn = 0;
	const last: number[] = ids.map(() => Number.NaN);
	let pull: PullTruth | null = null;
	let knocks = 0;
	let pullsDone = 0;

	/** One step of the car and, when it is time, a row. */
	const advance = (move: (s: State) => void) => {
		move(state);
		state.t += step;
		if (state.running) state.ran += step;
		const filling = 0.86 * (1 - ((state.rpm - 4300) / 7000) ** 2);
		const wide = Math.min(1, Math.max(0, (state.pedal - 0.14) / 0.7));
		const level = faults.fade && state.rpm > 4200 ? -faults.fade * ((state.rpm - 4200) / 1200) : 0;
		const rise = faults.creep && state.rpm > 3500 ? faults.creep * ((state.rpm - 3500) / 2000) : 0;
		const wanted =
			boosted && wide > 0.9
				? (target + (faults.overTarget ?? 0) + level + rise) / (1 + Math.exp(-(state.rpm - 2700) / 180))
				: 0;
		state.boost += ((wanted - state.boost) * step) / 0.25;
		const throttled = state.running ? 32_000 + (ambient - 32_000) * (1 - Math.exp(-5 * wide)) : ambient;
		const aim =
			state.boost > 2000 ? ambient - 1500 + state.boost : Math.min(throttled, ambient - (wide > 0.9 ? 1500 : 0));
		state.manifold += ((aim - state.manifold) * step) / 0.05;
		const full = state.manifold > 0.93 * ambient && wide > 0.6;
		const building = boosted && full && state.boost < 0.75 * target;
		const meant = full ? 0.87 + (lambdaFull - 0.87) * Math.min(1, state.boost / Math.max(1, target)) : 1;
		const lean = (full && state.rpm > 4200 ? (faults.leanOnTop ?? 0) : 0) + (building ? (faults.leanBuilding ?? 0) : 0);
		const want = full ? meant + lean : 1 + 0.012 * Math.sin(2 * Math.PI * 1.2 * state.t);
		state.lambda += ((want - state.lambda) * step) / 0.08;
		const heat =
			outside +
			12 +
			(boosted ? 18 * (state.boost / (8 * psi)) : 0) +
			(full && state.boost > 0.5 * target ? (faults.hotCharge ?? 0) : 0);
		state.charge += ((heat - state.charge) * step) / 4;
		const aimCoolant = faults.coolant ?? 362;
		if (state.running) state.coolant += ((aimCoolant - state.coolant) * step) / 150;
		history.push(state.lambda);
		const air = state.running
			? (filling * (state.manifold / (287.05 * state.charge)) * displacement * state.rpm) / 120
			: 0;
		const fuel = air / (state.lambda * stoichiometric);
		const deep = pull ? (state.t - pull.from) / 9 : 0;
		const gauge = state.manifold - ambient;
		const rail =
			(state.t < 0.3 ? (43.5 * psi * state.t) / 0.3 : 43.5 * psi) +
			gauge -
			(pull ? Math.min(1, deep) * (faults.railFalls ?? 0) : 0) -
			(full ? 0.5 * psi : 0);
		const across = Math.max(1, rail - gauge);
		const flow = ((60 * 0.45359237) / 3600) * (faults.injectorFlow ?? 1) * Math.sqrt(across / (43.5 * psi));
		const open = (fuel * 120) / (8 * state.rpm * flow);
		const { dead, perCycle } = driven.pulse;
		const pulse = state.running ? open / perCycle + (dead ? 0.001 : 0) : 0;
		if (pull) {
			pull.boostPeak = Math.max(pull.boostPeak, gauge);
			if (state.t > pull.from + 1.5 && (!boosted || state.boost > 0.8 * target))
				pull.lambdaLeanest = Math.max(pull.lambdaLeanest, state.lambda);
			if (!boosted || state.boost > 0.85 * target) pull.railLowest = Math.min(pull.railLowest, rail);
			pull.speedHighest = Math.max(pull.speedHighest, state.rpm);
		}
		if (state.t < next) return;
		next += 1 / driven.rate;
		const heard = history[Math.max(0, history.length - 1 - Math.round(late / step))]!;
		const cruising = state.gear === 5;
		const idling = state.running && state.gear === 0;
		const trims = (idling ? faults.idleTrim : cruising ? faults.cruiseTrim : undefined) ?? [0.01, -0.01];
		const inKnock =
			pull &&
			faults.knock &&
			state.rpm > 4300 &&
			pullsDone < (faults.knock.pulls ?? 99) &&
			knocks < faults.knock.readings;
		if (inKnock) knocks++;
		const volts = state.running ? charging : state.rpm > 0 ? (faults.crankVolts ?? 10.6) : 12.5;
		const oil = oilAt(state.rpm, faults);
		const shown = state.v * (1 + (faults.speedOff ?? 0));
		const meter = meterVolts(air * 3600);
		const readings: Record<string, number> = {
			engine_speed: coarse(Math.max(0, state.rpm + (state.rpm > 0 ? 3 * gauss() : 0)), rpmStep),
			pedal: coarse(state.pedal, 0.004),
			throttle: coarse(0.14 + 0.7 * wide + 0.002 * gauss(), 0.004),
			throttle_volts: 0.6 + ((faults.throttleOpen ?? 4.5) - 0.6) * wide + 0.01 * gauss(),
			manifold_pressure: coarse(
				Math.min(faults.manifoldTop ?? 1e9, state.manifold + (faults.manifoldOff ?? 0) + 300 * gauss()),
				pressureStep,
			),
			ambient_pressure: ambient,
			charge_temp: coarse(state.charge - (state.t < 31 && driven.cold ? (faults.coldOff ?? 0) : 0), 0.5),
			ambient_temp: coarse(driven.cold ?? outside, 1),
			coolant_temp: coarse(state.coolant + jumped(state, faults), 1),
			lambda_1: coarse(heard + 0.004 * gauss(), 0.01),
			lambda_2: coarse(heard + (faults.banksApart ?? 0) + 0.004 * gauss(), 0.01),
			injector_pulse: pulse * (1 + 0.004 * gauss()),
			meter_volts: coarse(Math.min(faults.meterTop ?? 99, meter + 0.01 * gauss()), 0.02),
			fuel_pressure: rail + 0.2 * psi * gauss(),
			pump_volts: volts - 0.35 - (full ? (faults.pumpLoss ?? 0) : 0) + 0.03 * gauss(),
			battery_volts: coarse(volts + 0.03 * gauss(), 0.1),
			oil_pressure: Math.max(0, oil + 0.4 * psi * gauss()),
			spark_advance: coarse(
				(state.running ? (full ? 16 : 30) : 5) + (full ? (faults.advance ?? 0) : 0) + 0.2 * gauss(),
				0.5,
			),
			knock_retard: inKnock ? faults.knock!.retard : 0,
			trim_short_1: state.running ? (full ? 0 : trims[0] + 0.015 * gauss()) : 0,
			trim_short_2: state.running ? (full ? 0 : trims[1] + 0.015 * gauss()) : 0,
			trim_long_1: 0,
			trim_long_2: 0,
			road_speed: coarse(shown, 1 / 3.6 / 4),
			gear: state.gear,
			loop_closed: full || !state.running ? 0 : 1,
		};
		const row = ids.map((id, index) => {
			const dead = faults.dead?.includes(id) ? ({ lambda_1: 0.85, lambda_2: 0.85 }[id] ?? 1) : readings[id]!;
			if (driven.polled && index !== turn % ids.length) return last[index]!;
			return (last[index] = dead);
		});
		turn++;
		rows.push([state.t, ...row]);
	};
	const hold = (seconds: number, move: (s: State) => void) => {
		const until = state.t + seconds;
		while (state.t < until - 1e-9) advance(move);
	};
	/** Towards an engine speed at so many rpm a second; road speed follows in gear. */
	const towards = (rpm: number, rate: number, pedal: number) => (s: State) => {
		s.pedal = pedal;
		s.rpm += Math.sign(rpm - s.rpm) * Math.min(Math.abs(rpm - s.rpm), rate * step);
		s.v = s.gear > 0 ? s.rpm / gearing(s.gear) : Math.max(0, s.v - 3 * step);
	};
	const idle = (seconds: number) =>
		hold(seconds, s => {
			towards(idleAt + (faults.hunting ?? 0) * 0.5 * Math.sign(Math.sin(s.t * 2)), 900, 0.14)(s);
		});

	hold(4, s => {
		s.rpm = 0;
	});
	hold(1.4, s => {
		s.rpm = faults.crankSpeed ?? vary(185, 0.05);
	});
	state.running = true;
	hold(1, towards(1150, 1500, 0.14));
	idle(driven.idle);
	for (const gear of [1, 2, 3, 4]) {
		state.gear = gear;
		state.rpm = Math.max(1200, state.v * gearing(gear));
		hold(4, towards(2600, 450, 0.35));
		state.gear = 0;
		hold(0.4, s => {
			s.pedal = 0.14;
			s.rpm = Math.max(1000, s.rpm - 1500 * step);
		});
	}
	state.gear = 5;
	state.v = 29;
	state.rpm = 29 * gearing(5);
	hold(driven.cruise, towards(29 * gearing(5), 100, 0.3));
	hold(4, towards(1700, 250, 0.14));
	state.gear = 0;
	state.v = 0;
	idle(driven.idle);
	for (; pullsDone < driven.pulls; pullsDone++) {
		state.gear = 3;
		state.rpm = 1900;
		hold(3, towards(2000, 60, 0.3));
		knocks = 0;
		const at = state.t;
		pull = { from: at, to: 0, boostPeak: -1e9, lambdaLeanest: 0, railLowest: 1e9, speedHighest: 0 };
		const top = faults.lastSpeed ?? 5600;
		let turning = state.rpm;
		while (turning < top) {
			const into = state.t - at;
			const stumble = (faults.stumbles ?? 0) > Math.floor((into - 2) / 0.7) && into > 2 && (into - 2) % 0.7 < 0.15;
			// As fast as the air that it breathes takes a car of that mass: the road load of the log gives the power of the model.
			const rate = boosted ? 365 + 0.012 * (turning - 2000) : 230;
			turning += (stumble ? -40 : rate) * step;
			const slips = 1 + (faults.slip ?? 0) * Math.min(1, Math.max(0, (turning - 3500) / 1500));
			advance(s => {
				s.pedal = 0.98;
				s.v = turning / gearing(3);
				s.rpm = turning * slips;
			});
		}
		pull.to = state.t;
		pulls.push(pull);
		pull = null;
		hold(5, towards(1700, 800, 0.14));
		state.gear = 0;
		state.v = 0;
		hold(3, towards(idleAt, 900, 0.14));
	}
	idle(25);
	state.running = false;
	state.rpm = 0;
	hold(3, s => {
		s.rpm = 0;
		s.pedal = 0.14;
	});
	const time = Float64Array.from(rows, row => row[0]!);
	if (faults.clockBack)
		time.forEach((at, index) => {
			if (index > rows.length / 2) time[index] = at - 60;
		});
	return {
		time,
		channels: new Map(ids.map((id, index) => [id, Float64Array.from(rows, row => row[index + 1]!)])),
		pulls,
	};
}

function coarse(value: number, by: number): number {
	return by * Math.round(value / by);
}

const all = [
	'engine_speed',
	'pedal',
	'throttle',
	'throttle_volts',
	'manifold_pressure',
	'ambient_pressure',
	'charge_temp',
	'ambient_temp',
	'coolant_temp',
	'lambda_1',
	'lambda_2',
	'injector_pulse',
	'meter_volts',
	'fuel_pressure',
	'pump_volts',
	'battery_volts',
	'oil_pressure',
	'spark_advance',
	'knock_retard',
	'trim_short_1',
	'trim_short_2',
	'trim_long_1',
	'trim_long_2',
	'road_speed',
	'gear',
	'loop_closed',
];

const channelsOf = ({ faults, polled }: Driven): string[] =>
	all.filter(id => !faults.without?.includes(id) && !(polled && id.startsWith('trim_long')));

/** Pa: 18 psi at idle, 48 psi from 3000 rpm. */
function oilAt(rpm: number, { oilDrops = 0, oilPressure = 1 }: Faults): number {
	const hot = rpm < 60 ? 0 : Math.min(48, 18 + (30 * Math.max(0, rpm - 780)) / 2220);
	return hot * oilPressure * psi * (1 - oilDrops * Math.min(1, Math.max(0, (rpm - 4000) / 800)));
}

/** The meter curve of rules/examples/boosted, V at kg/h, at the controller behind its scaler (5 of 8 V). */
const curve = [
	[0.6, 8],
	[0.8, 20],
	[1, 35],
	[2, 160],
	[3, 350],
	[4, 580],
	[5, 820],
	[6, 1060],
	[7, 1290],
	[8, 1500],
] as const;

function meterVolts(flow: number): number {
	const index = Math.max(
		1,
		curve.findIndex(([, at]) => at >= flow),
	);
	const [[v0, f0], [v1, f1]] = [curve[index - 1]!, curve[index]!];
	return (5 / 8) * (v0 + ((v1 - v0) * (flow - f0)) / (f1 - f0));
}

/** Two jumps of coolant at cruise, 3 s each. */
function jumped({ gear, ran }: State, { coolantJumps = 0 }: Faults): number {
	return gear === 5 && ran % 20 > 10 && ran % 20 < 14 ? coolantJumps : 0;
}
