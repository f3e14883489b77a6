import type { Kind } from '../../../src/units/kinds.ts';

/** Symbol, canonical units in one of it (null where that is no straight line), partner in the other set, other spellings. */
type Row = readonly [symbol: string, factor: number | null, partner: string | null, also: string];

/**
 * Every unit, written out a second time: factors worked out from the exact definitions of NIST SP 811, appendix B, in
 * fractions; spellings apart by spaces, a space inside one as `~`.
 */
export const everyUnit: Readonly<Record<Kind, readonly Row[]>> = {
	length: [
		['in', 0.0254, 'mm', 'inch inches ins "'],
		['thou', 2.54e-5, 'mm', 'thous thousandths mil mils'],
		['ft', 0.3048, 'm', "foot feet '"],
		['mm', 0.001, 'in', 'millimetre millimetres millimeter millimeters'],
		['cm', 0.01, 'in', 'centimetre centimetres centimeter centimeters'],
		['m', 1, 'ft', 'metre metres meter meters mtr'],
		['AN', 0.0015875, 'in', 'dash JIC'],
	],
	distance: [
		['m', 1, 'mi', 'meter meters metre metres'],
		['mi', 1609.344, 'km', 'mile miles'],
		['km', 1000, 'mi', 'kilometer kilometers kilometre kilometres'],
	],
	mass: [
		['lb', 0.45359237, 'kg', 'lbs pound pounds'],
		['kg', 1, 'lb', 'kilo kilos kilogram kilograms'],
	],
	area: [
		['AWG', null, 'mm2', 'ga gauge gage B&S'],
		['mm2', 1e-6, 'AWG', 'sq~mm square~mm mm~sq qmm'],
		['cm2', 0.0001, 'sq in', 'sq~cm square~cm'],
		['m2', 1, 'sq in', 'sq~m square~m'],
		['sq in', 0.00064516, 'cm2', 'in2 square~inch square~inches'],
	],
	volume: [
		['cu in', 1.6387064e-5, 'L', 'ci cid in3 cubic~inch cubic~inches cu~inches'],
		['cc', 1e-6, 'cu in', 'ccs ccm cm3 cu~cm ml millilitre millilitres'],
		['L', 0.001, 'cu in', 'ltr litre litres liter liters'],
		['gal', 3.785411784e-3, 'L', 'gals gallon gallons US~gal'],
		['m3', 1, 'cu in', 'cu~m cubic~metre cubic~metres'],
	],
	pressure: [
		['psi', 6894.757293168362, 'bar', 'psig psi~gauge lb/in2 lbs/in2 lb/sq~in lbf/in2 lb lbs pounds'],
		['bar', 100000, 'psi', 'barg bar~gauge bars'],
		['kPa', 1000, 'psi', 'kPag kPa~gauge'],
		['mbar', 100, 'psi', 'mbarg mbar~gauge millibar hPa'],
		['inHg', 3386.388640341, 'kPa', 'in~Hg~gauge inches~of~mercury "Hg'],
		['mmHg', 133.322387415, 'psi', 'mm~Hg~gauge'],
		['kg/cm2', 98066.5, 'psi', 'kgf/cm2 kp/cm2'],
		['MPa', 1000000, 'psi', 'MPa~gauge'],
		['Pa', 1, 'psi', 'Pa~gauge'],
	],
	'absolute-pressure': [
		['psia', 6894.757293168362, 'kPa abs', 'psi~abs psi~absolute lb/in2~abs'],
		['kPa abs', 1000, 'psia', 'kPa kPa~a kPa~absolute'],
		['bar abs', 100000, 'psia', 'bar bar~a bar~absolute'],
		['mbar abs', 100, 'psia', 'mbar mbar~a mbar~absolute hPa hPa~abs'],
		['inHg abs', 3386.388640341, 'kPa abs', 'in~Hg~a inHg~absolute'],
		['mmHg abs', 133.322387415, 'psia', 'mm~Hg~a mmHg~absolute'],
		['MPa abs', 1000000, 'psia', 'MPa MPa~a MPa~absolute'],
		['Pa abs', 1, 'psia', 'Pa Pa~a Pa~absolute'],
	],
	temperature: [
		['degF', 0.5555555555555556, 'degC', 'F deg~F degrees~F fahrenheit'],
		['degC', 1, 'degF', 'C deg~C degrees~C celsius centigrade'],
		['K', 1, 'degF', 'kelvin'],
	],
	'temperature-difference': [
		['degF', 0.5555555555555556, 'degC', 'F deg~F degrees~F fahrenheit'],
		['degC', 1, 'degF', 'C deg~C degrees~C celsius centigrade'],
		['K diff', 1, 'degF', 'K kelvin'],
	],
	angle: [['deg', 1, null, 'degs degree degrees']],
	rotation: [['rpm', 1, null, 'rev/min revs/min r/min 1/min revs revolutions/minute']],
	'mass-flow': [
		[
			'lb/h',
			0.00012599788055555556,
			'kg/h',
			'lb/hr lbs/h lbs/hr lbm/h lbm/hr lb/hour lbs/hour pounds/hour pph #/hr #/h',
		],
		['lb/min', 0.007559872833333333, 'kg/h', 'lbs/min lbm/min lb/minute pounds/minute'],
		['kg/h', 0.0002777777777777778, 'lb/min', 'kg/hr kgs/h kgs/hr kg/hour kgph'],
		['kg/min', 0.016666666666666666, 'lb/min', 'kg/minute'],
		['g/s', 0.001, 'lb/min', 'g/sec gm/s gm/sec gps grams/second'],
		['kg/s', 1, 'lb/min', 'kg/sec kg/second'],
	],
	'volume-flow': [
		['gal/h', 1.0515032733333334e-6, 'L/h', 'gal/hr gals/hr gal/hour gallons/hour gph US~gal/h'],
		['gal/min', 6.30901964e-5, 'L/min', 'gallons/minute gpm US~gal/min'],
		['cu ft/min', 0.0004719474432, 'L/min', 'cfm ft3/min cubic~feet/minute'],
		['L/h', 2.7777777777777776e-7, 'gal/h', 'l/hr lph ltr/h ltr/hr litres/hour liters/hour'],
		['L/min', 1.6666666666666667e-5, 'gal/h', 'lpm l/minute litres/minute liters/minute'],
		['cc/min', 1.6666666666666667e-8, 'gal/h', 'cc/m ccm cc/minute cm3/min ml/min ml/minute'],
		['m3/s', 1, 'gal/h', 'm3/sec'],
	],
	power: [
		['hp', 745.6998715822702, 'kW', 'bhp horsepower horse~power horses'],
		['PS', 735.49875, 'hp', 'metric~hp metric~horsepower cv ch pk'],
		['kW', 1000, 'hp', 'kilowatt kilowatts'],
		['W', 1, 'hp', 'watt watts'],
	],
	torque: [
		['lb-ft', 1.3558179483314003, 'N m', 'lbs-ft lbf-ft ft-lb ft-lbs ft-lbf foot~pounds foot-pound pound-feet lb-feet'],
		['lb-in', 0.1129848290276167, 'N m', 'lbs-in lbf-in in-lb in-lbs in-lbf inch~pounds pound-inches'],
		['N m', 1, 'lb-ft', 'newton~metre newton~metres newton~meters'],
		['kgf m', 9.80665, 'lb-ft', 'kg~m m~kg kp~m'],
	],
	force: [
		['lbf', 4.4482216152605, 'N', 'lb lbs pounds pounds-force lbs~force'],
		['N', 1, 'lbf', 'newton newtons'],
		['kN', 1000, 'lbf', 'kilonewton kilonewtons'],
		['kgf', 9.80665, 'lbf', 'kg kp kg~force'],
	],
	velocity: [
		['ft/s', 0.3048, 'm/s', 'ft/sec fps feet/second'],
		['ft/min', 0.00508, 'm/s', 'fpm feet/minute'],
		['mph', 0.44704, 'km/h', 'mi/h miles/hour'],
		['km/h', 0.2777777777777778, 'mph', 'kph kmh km/hr kmph'],
		['m/s', 1, 'ft/s', 'm/sec metres/second meters/second'],
	],
	ratio: [
		['1', 1, null, ''],
		[':1', 1, null, 'to~1 to~one'],
		['%', 0.01, null, 'percent per~cent pct'],
		['pipe diameters', 1, null, 'diameters diameter pipe~diameter dia D'],
	],
	voltage: [
		['V', 1, null, 'volt volts vdc v~dc'],
		['mV', 0.001, null, 'millivolt millivolts'],
		['kV', 1000, null, 'kilovolt kilovolts'],
	],
	current: [
		['A', 1, null, 'amp amps ampere amperes'],
		['mA', 0.001, null, 'milliamp milliamps milliampere milliamperes'],
	],
	resistance: [
		['ohm', 1, null, 'ohms R'],
		['kohm', 1000, null, 'kohms kiloohm kiloohms kilohm kilohms k'],
	],
	'resistance-per-length': [
		['ohm/ft', 3.2808398950131235, 'ohm/m', 'ohms/ft ohm/foot ohms/foot'],
		['kohm/ft', 3280.839895013123, 'kohm/m', 'kohms/ft k/ft kohm/foot kohms/foot'],
		['ohm/in', 39.37007874015748, 'ohm/m', 'ohms/in ohm/inch ohms/inch'],
		['kohm/m', 1000, 'kohm/ft', 'kohms/m k/m'],
		['ohm/m', 1, 'ohm/ft', 'ohms/m ohm/metre ohm/meter'],
	],
	charge: [
		['Ah', 3600, null, 'amp-hour amp-hours amp~hr ampere-hours A~h a.hr'],
		['C', 1, null, 'coulomb coulombs A~s'],
	],
	time: [
		['ms', 0.001, null, 'msec millisec millisecond milliseconds'],
		['us', 1e-6, null, 'usec microsec microsecond microseconds'],
		['s', 1, null, 'sec secs second seconds'],
	],
	days: [['days', 1, null, 'day d']],
	imbalance: [
		['oz-in', 0.000720077887375, 'g-cm', 'in-oz ounce-inch ounce-inches ozs~in'],
		['g-cm', 1e-5, 'oz-in', 'gm-cm cm-g gram~cm'],
		['g-mm', 1e-6, 'oz-in', 'gm-mm mm-g gram~mm'],
		['g-in', 2.54e-5, 'oz-in', 'gm-in in-g gram~inch gram~inches'],
		['kg m', 1, 'oz-in', ''],
	],
	octane: [
		['AKI', 1, 'RON', '(R+M)/2 PON pump pump~octane anti-knock~index'],
		['RON', 1, 'AKI', 'research research~octane'],
	],
	pulses: [
		['pulses/mi', 0.0006213711922373339, 'pulses/km', 'pulses/mile pulse/mile p/mi ppm'],
		['pulses/km', 0.001, 'pulses/mi', 'pulse/km p/km pulses/kilometre pulses/kilometer'],
		['pulses/m', 1, 'pulses/mi', 'pulses/metre pulses/meter'],
	],
	density: [
		['lb/gal', 119.82642731689663, 'kg/L', 'lbs/gal lb/gallon lbs/gallon'],
		['lb/ft3', 16.018463373960138, 'kg/m3', 'lbs/ft3 lb/cu~ft lbs/cu~ft'],
		['kg/L', 1000, 'lb/gal', 'kg/litre kg/liter g/cc g/cm3 g/ml'],
		['kg/m3', 1, 'lb/ft3', 'kg/cu~m'],
	],
	'energy-per-mass': [
		['BTU/lb', 2326, 'MJ/kg', 'BTU/pound'],
		['MJ/kg', 1000000, 'BTU/lb', ''],
		['kJ/kg', 1000, 'BTU/lb', ''],
		['J/kg', 1, 'BTU/lb', ''],
	],
	count: [['', 1, null, '']],
};
