// How long one use of the reference network of thirty hoods takes: in a general
// hydraulic engine, and in this package's solver, in the same run.
//
//   EPANET=FILE node beside.mjs
//
// FILE is the module of epanet-js 0.9.0 (npm); .ci/run whole fetches it.
// Both solve from nothing, again and again, the network being set up once. The
// engine's accuracy is set as the reference was made: its results are first
// held against the stored ones.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { cpus } from "node:os";
import { fileURLToPath, pathToFileURL } from "node:url";

const module = process.env.EPANET;
if (!module) throw new Error("EPANET does not name the module of epanet-js");
const { AnalysisStatistic, InitHydOption, LinkProperty, Option, Project, Workspace } = await import(pathToFileURL(module));

const here = new URL(".", import.meta.url);
const network = JSON.parse(readFileSync(new URL("../networks/g05_thirty_three_open.json", here), "utf8"));
const use = network.scenarios[0];

// The engine has constants of its own, rounded: gravity in ft/s2, litres in a
// cubic foot, the factor of a loss coefficient.
const gravity = 32.2 * 0.3048;
const litres = 28.317 / 28.316846592;
const coefficient = 8 / (Math.PI ** 2 * 32.2) / 0.02517;

// edges that are there: a gate that is not open takes its branch away.
function edges() {
  const shut = e => e.gate && !use.open.includes(e.gate);
  if (use.closed !== "removed") throw new Error("this use is not tight");
  return network.edges.filter(e => !shut(e));
}

// input is the network in the engine's own format: pressures as heads of air,
// flows in litres a second.
function input() {
  const list = edges();
  const head = network.air.rho_kg_m3 * gravity;
  const nodes = [...new Set(list.flatMap(e => [e.from, e.to]))];
  const open = node => network.atmosphere_nodes.includes(node);
  const density = network.air.rho_kg_m3 / network.fan.curve_rho_kg_m3;
  const of = kind => list.filter(e => e.kind === kind);
  return [
    "[JUNCTIONS]", ...nodes.filter(n => !open(n)).map(n => `${n} 0 0`),
    "[RESERVOIRS]", ...nodes.filter(open).map(n => `${n} 0`),
    "[PIPES]", ...of("duct").map(e => [e.id, e.from, e.to, e.L_m, e.D_mm, e.rough_mm, e.K * coefficient, "Open"].join(" ")),
    "[PUMPS]", ...of("fan").map(e => `${e.id} ${e.from} ${e.to} HEAD FAN`),
    "[VALVES]", ...of("linear").map(e => `${e.id} ${e.from} ${e.to} 200 GPV LINEAR_${e.id} 0`),
    "[CURVES]", ...network.fan.points.map(([flow, press]) => `FAN ${flow * 1000 * litres} ${press * density / head}`),
    ...of("linear").flatMap(e => [`LINEAR_${e.id} 0 0`, `LINEAR_${e.id} ${10000 * litres} ${e.r_Pa_s_m3 * 10 / head}`]),
    "[OPTIONS]", "UNITS LPS", "HEADLOSS D-W", `VISCOSITY ${network.air.nu_m2_s}`, "TRIALS 500", "UNBALANCED STOP",
    "[TIMES]", "DURATION 0", "[REPORT]", "STATUS NO", "SUMMARY NO", "[END]", "",
  ].join("\n");
}

const workspace = new Workspace();
await workspace.loadModule();
const engine = new Project(workspace);
workspace.writeFile("use.inp", input());
engine.open("use.inp", "use.rpt", "use.out");
engine.setOption(Option.Accuracy, 1e-8);
engine.setOption(Option.HeadError, 1e-8);
engine.setOption(Option.FlowChange, 1e-7);
engine.openH();
const solve = () => { engine.initH(InitHydOption.InitFlow); engine.runH(); };

solve();
if (engine.getStatistic(AnalysisStatistic.Iterations) > 500) throw new Error("the engine did not settle");
let worst = 0;
for (const [id, stored] of Object.entries(use.swamee_jain.edges)) {
  const flow = engine.getLinkValue(engine.getLinkIndex(id), LinkProperty.Flow) / 1000 / litres;
  worst = Math.max(worst, Math.abs(flow / stored[0] - 1));
}
if (worst > 2e-6) throw new Error(`the engine's flows differ from the stored ones by ${worst}`);

const rounds = 3000;
for (let i = 0; i < 300; i++) solve(); // warm
const start = performance.now();
for (let i = 0; i < rounds; i++) solve();
const engineTook = (performance.now() - start) * 1000 / rounds; // µs
engine.closeH();
engine.close();

const folder = fileURLToPath(new URL("../..", here));
const said = execFileSync("go", ["test", "-run", "none", "-bench", "Thirty/tight$", "-count", "3", "."], { cwd: folder, encoding: "utf8" });
const took = [...said.matchAll(/Thirty\/tight(?:-\d+)?\s+\d+\s+([\d.]+) ns\/op/g)].map(m => Number(m[1]) / 1000);
if (took.length !== 3) throw new Error(said);
const own = took.sort((a, b) => a - b)[1];

console.log(`${cpus()[0].model}, ${cpus().length} cores`);
console.log(`general engine ${engineTook.toFixed(1)} µs a solve, this solver ${own.toFixed(2)} µs: ${(engineTook / own).toFixed(0)} times faster`);
