import { keptFile, programIn, readKept } from './kept.ts';

// The file that the command runs: the program, with what was compiled of it kept by the build.
const kept = readKept(keptFile(__dirname, process.argv.slice(2)));
programIn(__dirname, kept).begin(require, __dirname, name => import(name));
