// Holds formulas/formula.schema.json against the reader:
//
//     node validate.mjs COMMAND        COMMAND: the path of the built leavenwright
//
// The last line counts the checks: "N passed, N failed".
import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { CORE_SCHEMA, load } from 'js-yaml';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..', '..');
const command = process.argv[2];
const schema = JSON.parse(readFileSync(join(root, 'formulas', 'formula.schema.json'), 'utf8'));

let passed = 0;
let failed = 0;

function check(what, isGood, why) {
  if (isGood) {
    ++passed;
  } else {
    ++failed;
    console.log(`FAILED ${what}\n    ${why()}`);
  }
}

// Throws where the schema is not well formed, or strictly speaking says nothing.
function compile() {
  const ajv = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true, allErrors: true });
  return ajv.compile(schema);
}

function yamlFiles(...directory) {
  const path = join(root, ...directory);
  return readdirSync(path).filter((name) => name.endsWith('.yaml')).sort().map((name) => join(path, name));
}

// undefined where the schema accepts `text`, otherwise what it says.
function schemaFault(validate, text) {
  if (validate(load(text, { schema: CORE_SCHEMA }))) {
    return undefined;
  }
  return validate.errors.map((error) => `${error.instancePath || '/'} ${error.message}`).join('; ');
}

function run(args, input) {
  const result = spawnSync(command, args, { encoding: 'utf8', input });
  if (result.error) {
    throw result.error;
  }
  return result;
}

function checkAccepted(validate, what, text, reading) {
  const fault = schemaFault(validate, text);
  check(`${what}: the schema accepts it`, fault === undefined, () => fault);
  check(`${what}: the reader accepts it`, reading.status === 0,
    () => `exit status ${reading.status}: ${reading.stderr}${reading.stdout}`);
}

// The first line of a broken document: "# CODE: what is wrong", CODE being the reader's.
function checkRefused(validate, what, text, reading) {
  const said = reading.stderr + reading.stdout;
  const code = /^# ([a-z-]+): /.exec(text)?.[1];
  check(`${what}: the schema refuses it`, schemaFault(validate, text) !== undefined, () => 'it is accepted');
  check(`${what}: the reader refuses it with ${code}`,
    reading.status === 1 && said.includes(`[${code}]`), () => `exit status ${reading.status}: ${said}`);
}

// A conversion may be refused, a levain that does not fit, say; what is written must be valid.
function checkConverted(validate, path) {
  const what = relative(root, path);
  const converted = run(['convert', path, '--format', 'formula']);
  if (converted.status === 1) {
    return false;
  }
  check(`${what}: converts`, converted.status === 0,
    () => `exit status ${converted.status}: ${converted.stderr}`);
  if (converted.status === 0) {
    checkAccepted(validate, `${what}, converted`, converted.stdout,
      run(['check', '-'], converted.stdout));
  }
  return true;
}

// Editors show title and description of every key; `part` is a schema, `path` where it stands.
function checkExplained(part, path) {
  if (part === null || typeof part !== 'object') {
    return;
  }
  for (const [key, value] of Object.entries(part)) {
    const isMapOfKeys = key === 'properties' && typeof value === 'object' && !path.includes('/oneOf/');
    for (const [name, property] of isMapOfKeys ? Object.entries(value) : []) {
      const referred = property.$ref ? schema.$defs[property.$ref.replace('#/$defs/', '')] : {};
      check(`schema: ${path}/${name} has a title and a description`,
        (property.title ?? referred.title) && (property.description ?? referred.description),
        () => 'one is missing');
    }
    checkExplained(value, `${path}/${key}`);
  }
}

function checkAll() {
  const validate = compile();
  checkExplained(schema, '');
  let refused = 0;
  const accepted = [...yamlFiles('formulas'), ...yamlFiles('tests', 'schema', 'corpus', 'good')];
  for (const path of accepted) {
    checkAccepted(validate, relative(root, path), readFileSync(path, 'utf8'), run(['check', path]));
    refused += checkConverted(validate, path) ? 0 : 1;
  }
  check('most formulas convert', refused * 4 <= accepted.length, () => `${refused} of ${accepted.length} do not`);
  for (const path of yamlFiles('tests', 'schema', 'corpus', 'broken')) {
    checkRefused(validate, relative(root, path), readFileSync(path, 'utf8'), run(['check', path]));
  }
  console.log(`${accepted.length} formulas; the conversion of ${refused} of them was refused`);
}

try {
  checkAll();
} catch (fault) {
  ++failed;
  console.log(`FAILED: the checks did not run to their end\n    ${fault.stack}`);
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
