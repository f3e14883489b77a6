// Loaded before the command by a test, never shipped: breaks one call of the system with an error that no program expects.
// BREAK is the name of the call, BREAK_AFTER how often it works before.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { BREAK: name = '', BREAK_AFTER: after = '0' } = process.env;
const real = fs[name];
let calls = 0;
fs[name] = (...args) => {
	if (calls++ >= Number(after)) throw new TypeError('broken on purpose');
	return real(...args);
};
syncBuiltinESMExports();
