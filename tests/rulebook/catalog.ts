import type { Harm, Stage } from '../../src/rulebook/rulebook.ts';

/**
 * What the rulebook must speak of, line by line, with the rules that do. Where a line can hurt somebody or leave the
 * engine in pieces it has a floor: none of its rules may be filed under a later stage or a lesser harm.
 */
export interface Line {
	readonly says: string;
	readonly rules: readonly string[];
	readonly floor?: readonly [Stage, Harm];
}

const line = (says: string, rules: string, floor?: readonly [Stage, Harm]): Line => ({
	says,
	rules: rules.split(' '),
	...(floor ? { floor } : {}),
});

const crank = ['crank', 'person'] as const;
const fire = ['fire', 'person'] as const;
const move = ['move', 'person'] as const;
const boost = ['boost', 'person'] as const;

const build = [
	line('throttle not proved to snap shut', 'build.throttle-not-proved', fire),
	line('does not stop with the key', 'build.stop-not-proved', fire),
	line('fuel lines near heat or moving parts', 'build.fuel-line-near-heat', fire),
	line('exhaust ends in the room', 'build.exhaust-in-room', fire),
	line(
		'mounts, belt and fan path, things left in the intake',
		'build.mounts-not-tight build.belt-path-not-clear build.intake-not-looked-into',
		['fire', 'engine'],
	),
	line('steering not free or near the exhaust', 'build.steering-not-free build.steering-near-exhaust', move),
	line('power steering hoses: ends, heat, leaks', 'build.steering-hoses-not-proved', move),
	line('brakes', 'build.brakes-not-proved', move),
	line('brake lines', 'build.brake-lines-not-clear', move),
	line('booster vacuum', 'build.booster-loses-vacuum', move),
	line('hood', 'build.hood-not-clear', move),
	line('shaft travel', 'build.shaft-travel-not-proved', move),
	line('pan and pickup', 'build.oil-pan-not-clear', ['move', 'engine']),
	line('power goal against computed power', 'build.power-goal-short'),
	line(
		'inspection applies while emissions parts are missing',
		'build.inspection-vapour-open build.inspection-oxygen-missing build.inspection-recirculation-missing build.inspection-breather-open',
	),
];

const engine = [
	line('vacuum for the brake booster behind another camshaft', 'engine.idle-vacuum-low-for-brakes', move),
	line('compression lowest against highest', 'engine.compression-uneven'),
	line('all low against the expected band', 'engine.compression-all-low engine.compression-under-floor'),
	line('wet test recovers or not', 'engine.rings-leak engine.valves-or-gasket-leak engine.rings-worn-evenly'),
	line('two neighbours low', 'engine.neighbours-low'),
	line('leak-down a cylinder', 'engine.leakdown-reject engine.leakdown-watch engine.leakdown-uneven'),
	line('milky oil', 'engine.milky-oil'),
	line('oil film in coolant', 'engine.oil-in-coolant'),
	line('bubbles while running', 'engine.bubbles-in-coolant'),
	line('fuel in oil', 'engine.fuel-in-oil'),
	line('metal in oil', 'engine.metal-in-oil'),
	line('coolant in oil with original bearings', 'engine.coolant-eaten-bearings'),
	line('overheated with stretch fasteners reused', 'engine.stretch-bolts-after-overheating'),
	line('stretch fasteners reused under boost', 'engine.stretch-bolts-reused-under-boost engine.stretch-bolts-reused'),
	line('head clamp under 1.3, under 1.8', 'engine.head-lifts-under-boost engine.head-clamp-thin'),
	line('composite gasket under boost', 'engine.composite-gasket-under-boost'),
	line(
		'cast or hypereutectic pistons against cylinder pressure',
		'engine.cast-pistons-overloaded engine.hypereutectic-pistons-overloaded',
	),
	line('ring gap', 'engine.ring-gap-small-for-boost engine.ring-gap-small'),
	line('hot oil pressure at idle and 3000', 'engine.oil-pressure-idle-low engine.oil-pressure-low-at-speed'),
	line('piston speed', 'engine.piston-speed-cast engine.piston-speed-forged'),
	line('pump rotation against belt path', 'engine.pump-turns-backwards'),
	line('breather under boost without check valve', 'engine.breather-no-check-valve'),
	line('ratio and displacement arithmetic', 'engine.ratio-disagrees engine.displacement-disagrees'),
	line('stood a year', 'engine.not-primed-after-standing engine.dry-seals engine.stale-fuel'),
];

const harness = [
	line('switched feed missing, or dead in crank', 'harness.switched-feed-missing harness.switched-feed-dead-in-crank', [
		'crank',
		'strands',
	]),
	line('keep-alive missing', 'harness.keepalive-missing'),
	line('keep-alive unfused', 'harness.keepalive-unfused', crank),
	line('controller ground', 'harness.controller-ground-missing'),
	line('each ground strap', 'harness.main-ground-missing harness.head-ground-missing'),
	line('ground drop, feed drop cranking', 'harness.ground-drop-cranking harness.feed-drop-cranking'),
	line('pump relay always on, by hand', 'harness.pump-always-on harness.pump-by-hand', fire),
	line('nothing cuts the pump off', 'harness.no-pump-cutoff', fire),
	line('no crash cut-off', 'harness.no-crash-switch', move),
	line('open or twisted splices', 'harness.open-splices harness.twisted-splices'),
	line('routing that burns or chafes', 'harness.routing-near-exhaust harness.routing-chafes', fire),
	line('other routing', 'harness.routing-unsupported harness.routing-near-plug-wires'),
	line('vehicle plug mates but the charge lamp circuit is missing', 'harness.charge-lamp-circuit-missing'),
	line(
		'circuits the calibration needs',
		'harness.front-oxygen-circuit-missing harness.speed-circuit-missing harness.clutch-or-neutral-switch-missing',
	),
	line('comfort circuits', 'harness.comfort-circuit-missing harness.air-conditioning-circuit-missing'),
	line('automatic calibration with a manual gearbox', 'harness.automatic-calibration-manual-gearbox'),
	line('shift solenoids absent', 'harness.shift-solenoids-absent'),
	line('anti-theft active', 'harness.antitheft-active'),
	line('harness year against controller year', 'harness.controller-year-differs'),
	line('harness year against engine year', 'harness.engine-year-differs'),
	line('diagnostic link silent', 'harness.diagnostic-link-silent'),
	line('check lamp missing', 'harness.check-lamp-missing'),
	line('key-off draw and days to flat', 'harness.key-off-draw-high harness.flat-within-two-weeks'),
	line('each stored generic code', 'harness.stored-code harness.stored-code-not-listed'),
	line(
		'two answers that state one fact differently',
		'harness.charge-lamp-told-two-ways harness.reverse-lamps-told-two-ways harness.speed-signal-told-two-ways',
	),
	line('start inhibit told two ways', 'harness.start-inhibit-told-two-ways', crank),
	line('pump cut-off told two ways', 'harness.pump-answers-disagree', fire),
	line(
		'halves of plugs that burn, are live at a loose end, misread, forced or badly fused',
		'pins.meet-and-burn pins.airbag-wire pins.open-end pins.read-mirrored pins.shell-forced pins.feed-unfused pins.fuse-over-wire pins.link-lost',
		crank,
	),
	line('meetings that kill, wires in one splice', 'pins.meet-and-kill pins.reference-shared', ['crank', 'engine']),
	line('wires of plugs that are thin, or too near the exhaust', 'pins.wire-thin pins.insulation-cool', fire),
	line('a pair reversed', 'pins.pair-swapped', ['fire', 'engine']),
	line(
		'circuits moved, missing, twice, not known, misled',
		'pins.moved pins.required-missing pins.required-unknown pins.circuit-twice pins.pin-twice pins.not-recognised pins.meet-and-mislead pins.return-as-ground',
	),
];

const sensors = [
	line('a throttle moved by a motor', 'sensors.throttle-parts-mixed sensors.pedal-signals-differ', fire),
	line('cam wires differ', 'sensors.cam-wires-differ'),
	line('cam wires agree but the drive does not', 'sensors.cam-drive-from-other-year'),
	line('crank wires or teeth differ', 'sensors.crank-wires-differ sensors.crank-teeth-differ'),
	line('throttle plug differs', 'sensors.throttle-plugs-differ'),
	line('throttle closed and open volts', 'sensors.throttle-closed-volts sensors.throttle-open-volts'),
	line('oil sender differs', 'sensors.oil-sender-differs'),
	line('coolant gauge sender', 'sensors.coolant-gauge-unmatched'),
	line('air temperature before the compressor', 'sensors.air-temp-not-in-the-charge'),
	line('front oxygen missing or unheated', 'sensors.front-oxygen-missing sensors.front-oxygen-unheated'),
	line('rear oxygen expected and missing', 'sensors.rear-oxygen-missing'),
	line('knock sensor not wired', 'sensors.knock-not-wired-under-boost sensors.knock-not-wired'),
	line('recirculation differs', 'sensors.recirculation-differs'),
	line('head passages missing', 'sensors.recirculation-passages-missing'),
	line('flange differs', 'sensors.recirculation-flange-differs'),
	line('speed source differs', 'sensors.speed-through-module sensors.speed-module-missing sensors.speed-signal-none'),
	line('pulses error', 'sensors.speed-pulses-off'),
	line('meter off its curve or above the ceiling', 'sensors.meter-over-range-under-boost sensors.meter-over-range'),
	line('scaler too low', 'sensors.scaler-too-low'),
	line('scaler so high that idle drops out', 'sensors.scaler-too-high'),
	line('curve in the controller is another', 'sensors.curve-hides-load sensors.scaler-with-old-curve'),
	line('no table for the meter', 'sensors.no-table-for-meter'),
	line('straight run', 'sensors.meter-straight-run-short'),
	line('full-bore meter on the pressure side', 'sensors.full-bore-meter-under-pressure'),
	line("pressure sensor's top below the manifold", 'sensors.pressure-sensor-tops-out'),
	line('no meter and no pressure sensor', 'sensors.no-load-sensor'),
];

const injectors = [
	line('plugs differ', 'injectors.plugs-differ'),
	line('duty at peak, flow needed', 'injectors.duty-over-limit injectors.duty-over-limit-unboosted'),
	line('pressure across falls with boost', 'injectors.pressure-falls-with-boost'),
	line('pressure across low', 'injectors.pressure-across-low'),
	line("controller's flow figure differs", 'injectors.controller-figure-too-big injectors.controller-figure-too-small'),
	line('low resistance on a saturated driver', 'injectors.low-resistance-on-switch'),
	line('seals reused', 'injectors.seals-reused', fire),
	line('as found on an engine that stood', 'injectors.as-found-after-standing'),
	line('idle pulse short', 'injectors.idle-pulse-short'),
];

const ignition = [
	line('spark margin at target, gap over its limit', 'ignition.gap-too-wide ignition.gap-over-limit-unboosted'),
	line('gap needlessly small', 'ignition.gap-needlessly-small'),
	line('heat range', 'ignition.plugs-too-hot ignition.plugs-too-cold'),
	line('plug metal that wears one way', 'ignition.plug-wears-one-way'),
	line('wire resistance', 'ignition.wire-resistance-high'),
	line('boot near the header, sharper boot', 'ignition.boot-near-header ignition.sharper-boot-would-help'),
	line('tower pairs', 'ignition.coil-pairs-wrong'),
	line('base timing unchecked', 'ignition.base-timing-unchecked ignition.distributor-not-timed'),
	line('advance against the knock band', 'ignition.advance-over-knock-band ignition.advance-over-knock-band-unboosted'),
	line('distributor with boost and no retard', 'ignition.distributor-no-retard'),
];

const fuel = [
	line('hose not injection-rated', 'fuel.hose-not-for-injection fuel.hose-over-its-pressure', fire),
	line('worm-clamped barbs', 'fuel.worm-clamps', fire),
	line('leak test not done or leaked', 'fuel.leak-test-not-done fuel.leak-found', fire),
	line('no extinguisher', 'fuel.no-extinguisher', fire),
	line('pump flow at pressure and volts', 'fuel.pump-short fuel.pump-short-unboosted'),
	line('volts at the pump', 'fuel.pump-volts-low'),
	line('pump wire and fuse', 'fuel.pump-wire-may-burn fuel.pump-unfused', fire),
	line('pump fuse over the chart', 'fuel.pump-wire-not-protected'),
	line('line velocity, bore, smallest bore', 'fuel.line-too-fast fuel.line-loss-high fuel.fitting-chokes'),
	line('rail pressure under flow', 'fuel.rail-pressure-sags fuel.rail-pressure-sags-unboosted'),
	line('controlled pump on a plain relay', 'fuel.controlled-pump-on-plain-relay', fire),
	line('ordinary hose in the tank', 'fuel.tank-hose-ordinary', fire),
	line('filter after standing', 'fuel.filter-after-standing'),
	line('plain tank on a circuit', 'fuel.plain-tank-in-bends'),
	line('vapour line open', 'fuel.vapour-line-open', fire),
	line('octane against ratio and boost', 'fuel.octane-too-low fuel.octane-too-low-unboosted'),
	line('E85 with petrol-sized parts', 'fuel.e85-petrol-sized-parts'),
	line(
		'measured against computed pressure',
		'fuel.key-on-pressure-low fuel.key-on-pressure-high fuel.rail-ignores-boost fuel.pump-side-falls-behind',
	),
];

const boosted = [
	line('target under spring', 'boost.target-under-spring'),
	line('logged peak over target', 'boost.peak-over-target'),
	line('no over-boost cut', 'boost.no-overboost-cut'),
	line('no wideband', 'boost.no-wideband'),
	line('charge temperature', 'boost.charge-warm boost.charge-too-hot'),
	line('flow against choke', 'boost.compressor-choked'),
	line('no intercooler above 8 psi', 'boost.no-intercooler'),
	line('pipe velocity', 'boost.pipe-too-small'),
	line('plain pipe ends', 'boost.plain-pipe-ends'),
	line('oil drain', 'boost.oil-drain-blocked'),
	line('unrestricted feed on a ball bearing', 'boost.oil-feed-unrestricted'),
	line('lambda lean', 'boost.lambda-meant-lean boost.lambda-logged-lean'),
	line('bare hot side', 'boost.hot-side-bare', boost),
	line('bypass', 'boost.bypass-vents-metered-air boost.bypass-after-meter boost.no-bypass'),
	line('booster line without check valve', 'boost.booster-line-open', move),
	line('purge line without check valve', 'boost.purge-line-open', boost),
	line("the ladder's lowest against target", 'boost.target-over-lowest-limit'),
];

const charging = [
	line('exciter missing', 'charging.no-exciter'),
	line('feeding back so that it runs on after key-off', 'charging.runs-on-after-key-off', fire),
	line('running volts', 'charging.undercharging charging.overcharging'),
	line('rest volts', 'charging.battery-low'),
	line('cable drop, fuse too small', 'charging.cable-drop charging.cable-fuse-too-small'),
	line('cable fuse missing, or far too large for it', 'charging.cable-unfused charging.cable-may-burn', crank),
	line('cable fuse over the chart', 'charging.cable-too-thin'),
	line('balance at idle and cruise', 'charging.short-at-idle charging.short-at-cruise'),
];

const driveline = [
	line('what one stop does to the front brakes', 'driveline.brakes-fade-in-one-stop driveline.drums-in-front', move),
	line('tires by speed and load', 'driveline.tires-too-slow driveline.tires-overloaded', move),
	line('park holds and the lever tells the truth', 'driveline.park-not-proved', move),
	line("lines of an automatic's fluid", 'driveline.fluid-lines-unfit', fire),
	line('start inhibit that belongs to an automatic', 'driveline.start-inhibit-not-of-automatic', crank),
	line('balances differ', 'driveline.balance-differs driveline.imbalance-differs'),
	line('damper', 'driveline.damper-balance-differs driveline.damper-imbalance-differs'),
	line('pilot bearing', 'driveline.no-pilot-bearing'),
	line('clutch margin', 'driveline.clutch-slips driveline.clutch-thin-margin'),
	line('gearbox margin, 0 to 20 %', 'driveline.gearbox-thin-margin', ['tidy', 'wear']),
	line('gearbox margin below 0', 'driveline.gearbox-over-rating', ['move', 'strands']),
	line('housing runout', 'driveline.housing-runs-out'),
	line('shaft speed near critical', 'driveline.shaft-near-critical', move),
	line('joints', 'driveline.front-joint-angle driveline.rear-joint-angle driveline.joint-angles-differ'),
	line('start inhibit missing', 'driveline.no-start-inhibit', crank),
	line('ring gear and starter teeth', 'driveline.ring-gear-differs', ['crank', 'strands']),
	line('converter gap', 'driveline.converter-gap-small driveline.converter-gap-large', ['crank', 'engine']),
	line('guards on strip or circuit', 'driveline.no-shaft-loop driveline.no-scatter-shield', move),
	line('reverse lamps', 'driveline.reverse-lamps-dead'),
	line('cruise rpm', 'driveline.cruise-revs-high driveline.cruise-revs-low'),
];

const cooling = [
	line('no fan', 'cooling.no-fan'),
	line('open fan in a hot place', 'cooling.fan-without-shroud'),
	line('fan wire and fuse', 'cooling.fan-fuse-too-small cooling.fan-fuse-too-large'),
	line('radiator made for less power', 'cooling.radiator-too-small'),
	line('not bled', 'cooling.air-in-system'),
	line('no leak test', 'cooling.leak-untested'),
	line('no thermostat', 'cooling.no-thermostat'),
	line('cap pressure', 'cooling.cap-too-weak'),
	line('cap stronger than the radiator', 'cooling.cap-too-strong', fire),
];

export const catalog: readonly Line[] = [
	...build,
	...engine,
	...harness,
	...sensors,
	...injectors,
	...ignition,
	...fuel,
	...boosted,
	...charging,
	...driveline,
	...cooling,
];
