#!/usr/bin/env node
console.log("underhook: serve, listen, compute, verify are on their way.");
