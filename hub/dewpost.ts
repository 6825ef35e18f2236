#!/usr/bin/env node
import { runVerb } from './main/verbs.ts';

process.exitCode = await runVerb(process.argv.slice(2));
