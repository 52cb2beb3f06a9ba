// Reads a .glb from standard input and writes the validator's report, JSON, to standard output.
const { readFileSync } = require("node:fs");
const { createRequire } = require("node:module");

const validator = createRequire(process.argv[2])("gltf-validator");
validator
  .validateBytes(new Uint8Array(readFileSync(0)), { maxIssues: 0 })
  .then((report) => process.stdout.write(JSON.stringify(report)));
