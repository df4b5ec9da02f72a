// One graph as JSON a line in, its layout by elkjs layered and the milliseconds that took a line out. ELKJS_AT names the folder with node_modules.
import { createInterface } from 'node:readline';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const at = process.env.ELKJS_AT ?? import.meta.dirname;
const ELK = createRequire(join(at, 'x.js'))('elkjs/lib/elk.bundled.js');
const elk = new ELK();
const side = { Left: 'WEST', Right: 'EAST', Top: 'NORTH', Bottom: 'SOUTH' };

const asElk = g => ({
  id: 'root',
  layoutOptions: {
    'elk.algorithm': 'layered', 'elk.direction': 'RIGHT', 'elk.edgeRouting': 'ORTHOGONAL', 'elk.partitioning.activate': 'true',
    'elk.layered.thoroughness': String(g.thoroughness), 'elk.spacing.nodeNode': '12', 'elk.spacing.edgeEdge': '6', 'elk.spacing.edgeNode': '8',
    'elk.layered.spacing.nodeNodeBetweenLayers': '24', 'elk.layered.spacing.edgeEdgeBetweenLayers': '6', 'elk.layered.spacing.edgeNodeBetweenLayers': '8',
  },
  children: g.devices.map(d => ({
    id: d.id, width: d.width, height: d.height,
    layoutOptions: { 'elk.portConstraints': d.free ? 'FREE' : 'FIXED_SIDE', 'elk.partitioning.partition': String(d.zone) },
    ports: d.ports.map(p => ({ id: p.id, width: 0, height: 0, layoutOptions: { 'elk.port.side': side[p.side] } })),
  })),
  edges: g.wires.flatMap(w => w.to.map((to, k) => ({
    id: `${w.id}|${k}`, sources: [w.from], targets: [to],
    labels: k === 0 && w.labelWidth > 0 ? [{ text: w.id, width: w.labelWidth, height: w.labelHeight, layoutOptions: { 'elk.edgeLabels.inline': 'true' } }] : [],
  }))),
});

for await (const line of createInterface({ input: process.stdin })) {
  const graph = asElk(JSON.parse(line));
  const start = performance.now();
  let answer;
  try {
    const r = await elk.layout(graph);
    answer = {
      width: r.width, height: r.height,
      devices: r.children.map(n => ({ box: [n.x, n.y, n.width, n.height], ports: n.ports.map(p => [n.x + p.x, n.y + p.y]) })),
      courses: r.edges.map(e => e.sections.flatMap(s => [s.startPoint, ...(s.bendPoints ?? []), s.endPoint].map(p => [p.x, p.y]))),
      labels: r.edges.map(e => (e.labels ?? []).map(l => [l.x, l.y, l.width, l.height])[0] ?? null),
    };
  } catch (e) {
    answer = { error: String(e).slice(0, 200) };
  }
  answer.milliseconds = performance.now() - start;
  process.stdout.write(JSON.stringify(answer) + '\n');
}
