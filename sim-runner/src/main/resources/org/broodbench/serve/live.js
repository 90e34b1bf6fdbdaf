(() => {
  'use strict';
  const $ = (id) => document.getElementById(id);
  const all = (selector, from) => [...(from || document).querySelectorAll(selector)];
  const root = document.documentElement;
  root.classList.add('script');

  // ---- this tab names itself once; the server keeps its page under that name

  let tab = sessionStorage.getItem('tab');
  if (tab === null) {
    tab = [...crypto.getRandomValues(new Uint8Array(12))].map((b) => b.toString(36)).join('');
    sessionStorage.setItem('tab', tab);
  }

  async function ask(path, lines, signal) {
    const answer = await fetch('/api/' + path + '?tab=' + tab, { method: 'POST', body: lines.join('\n') || '\n', signal });
    if (answer.headers.get('Content-Type') === 'application/problem+json') {
      const problem = new Error('problem');
      problem.problems = (await answer.json()).problems;
      throw problem;
    }
    if (answer.status === 409 || answer.status === 429) throw new DOMException('overtaken', 'AbortError');
    if (!answer.ok) throw new Error(await answer.text());
    return answer;
  }

  // ---- what is there

  let rig = null; // what can be turned and broken, and words
  let now = null; // the run shown
  let before = null; // the one before the last change
  let looked = {}; // verdicts of the state shown: quick and, when it is there, full
  let lookedBefore = {}; // those before the last change
  let us = localStorage.getItem('units') === 'us';
  let history = [{ settings: {}, faults: [], label: '' }];
  let at = 0; // which of the history is shown
  let moment = 0; // s since the start
  const state = () => history[at];

  // ---- numbers and units

  function digits(n, decimals) {
    if (!Number.isFinite(n)) return 'none';
    const text = Math.abs(n).toFixed(decimals);
    return n < 0 && Number(text) !== 0 ? '−' + text : text;
  }
  function amount(q, n, decimals) {
    const u = rig.units[q];
    if (!Number.isFinite(n)) return 'none';
    const d = us && (q === 't' || q === 'k') ? Math.max(1, decimals) : decimals;
    return digits(us ? n * u[0] + u[1] : n, d) + ' ' + u[us ? 3 : 2];
  }
  function writeNumbers(from) {
    for (const el of all('data[data-q]', from)) {
      const u = rig.units[el.dataset.q];
      const d = Number(us && el.dataset.e !== undefined ? el.dataset.e : el.dataset.d);
      const text = digits(us ? Number(el.value) * u[0] + u[1] : Number(el.value), d);
      el.textContent = el.dataset.b === undefined ? text + ' ' + u[us ? 3 : 2] : text;
    }
    for (const el of all('[data-u]', from)) el.textContent = rig.units[el.dataset.u][us ? 3 : 2];
  }
  /** HTML that the program made, with its numbers in the units of the page. */
  function put(el, html) {
    el.innerHTML = html;
    writeNumbers(el);
  }
  function element(name, props, ...inner) {
    const el = Object.assign(document.createElement(name), props);
    el.append(...inner);
    return el;
  }

  const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const two = (n) => String(n).padStart(2, '0');
  function timeWords(s) {
    const d = new Date((now.start + s) * 1000);
    return d.getUTCDate() + ' ' + MONTHS[d.getUTCMonth()] + ' ' + two(d.getUTCHours()) + ':' + two(d.getUTCMinutes());
  }
  function lengthWords(s) {
    if (s < 90) return Math.round(s) + ' s';
    if (s < 5400) return Math.floor(s / 60) + ' min' + (s % 60 >= 1 ? ' ' + Math.round(s % 60) + ' s' : '');
    return (s / 3600).toFixed(1) + ' h';
  }

  // ---- runs

  function unpack(buffer) {
    const long = new DataView(buffer).getInt32(0, true);
    const run = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 4, long)));
    run.column = {};
    let from = 4 + long;
    for (const [name, length] of run.columns) {
      run.column[name] = new Float32Array(buffer, from, length);
      from += 4 * length;
    }
    return run;
  }

  function linesOf(entry) {
    const lines = Object.entries(entry.settings).map(([k, v]) => k + '=' + v);
    entry.faults.forEach((f, i) => {
      const row = 'event.' + (rig.rows + i) + '.';
      lines.push(row + 'at=' + f.at + ' s', row + 'what=' + f.what);
      if (f.lasts) lines.push(row + 'lasts=' + f.lasts);
      if (f.present !== undefined) lines.push(row + 'present=' + f.present);
    });
    return lines;
  }

  let busy = false;
  let again = false;
  let touchedMs = 0;
  let later = null;
  let waiting = 0;
  let drawn = 0;

  /** The newest state is what counts: while a run is under way, later changes wait for its end. */
  async function runQuick() {
    if (later !== null) later.abort();
    clearTimeout(waiting);
    if (busy) {
      again = true;
      return;
    }
    busy = true;
    do {
      again = false;
      $('state').textContent = 'Working out …';
      try {
        const answer = await ask('quick', linesOf(state()));
        now = unpack(await answer.arrayBuffer());
        looked = { quick: now.requirements };
        trouble('');
        draw();
        await new Promise((done) => requestAnimationFrame(done));
        root.dataset.lastMs = Math.round(performance.now() - touchedMs);
      } catch (e) {
        failed(e);
      }
    } while (again);
    busy = false;
    root.dataset.drawn = ++drawn;
    waiting = setTimeout(runFull, 300);
  }

  async function runFull() {
    later = new AbortController();
    const { signal } = later;
    const lines = linesOf(state());
    try {
      const answer = await ask('full', lines, signal);
      now = unpack(await answer.arrayBuffer());
      looked.full = now.requirements;
      draw();
      const values = await (await ask('values', lines, signal)).json();
      for (const [path, v] of Object.entries(values)) Object.assign(rig.keys[path] || {}, v);
      showKnobs();
      root.dataset.full = ++drawn;
      $('mend-words').textContent = now.met ? 'Nothing is missed.' : 'Trying single changes, by simulation …';
      $('mend-list').replaceChildren();
      $('mend-how').textContent = '';
      if (!now.met) showRemedies(await (await ask('remedies', lines, signal)).json());
    } catch (e) {
      failed(e);
    }
  }

  function failed(e) {
    if (e.name === 'AbortError') return;
    if (e.problems !== undefined) {
      trouble('Not run. ' + e.problems.map((p) => (p.key ? p.key + ': ' : '') + 'found ' + p.found + (p.allowed ? ', allowed ' + p.allowed : '') + '. ' + p.hint).join(' '));
      $('state').textContent = 'The picture is of the last run that worked.';
    } else if (e instanceof TypeError) {
      trouble('The program does not answer. Start it again, and open the address that it prints.');
    } else {
      trouble(String(e.message || e));
    }
  }
  function trouble(words) {
    $('trouble').textContent = words;
    $('trouble').hidden = words === '';
  }

  // ---- changes, undo, reset

  let dragging = false;

  /** Takes a new state; while a slider is dragged, it replaces the one that the drag began. */
  function change(next, keepsLast) {
    touchedMs = performance.now();
    if (keepsLast) {
      history[at] = next;
    } else {
      remember();
      history = history.slice(0, at + 1).slice(-60);
      history.push(next);
      at = history.length - 1;
    }
    shown();
  }
  function remember() {
    before = now;
    lookedBefore = looked;
  }
  function shown() {
    keep();
    showChanged();
    showKnobs();
    showBroken();
    runQuick();
  }
  function travel(steps) {
    const to = at + steps;
    if (to < 0 || to >= history.length) return;
    touchedMs = performance.now();
    remember();
    at = to;
    shown();
  }
  function set(path, text, drag) {
    const settings = { ...state().settings };
    if (text === null) delete settings[path];
    else settings[path] = text;
    change({ settings, faults: state().faults }, drag && dragging);
    dragging = drag;
  }

  let keeping = 0;
  function keep() {
    clearTimeout(keeping);
    keeping = setTimeout(() => {
      ask('keep', [JSON.stringify({ history: history.slice(-20), at: Math.max(0, at - Math.max(0, history.length - 20)), moment: Math.round(moment) })]).catch(failed);
    }, 150);
  }

  function showChanged() {
    const settings = Object.entries(state().settings);
    const faults = state().faults.length;
    const parts = settings.map(([k, v]) => nameOf(k) + ' ' + v);
    if (faults > 0) parts.push(faults + (faults === 1 ? ' fault' : ' faults'));
    $('changed').textContent = parts.length === 0 ? 'Nothing is changed.' : 'Changed: ' + parts.join(', ') + '.';
    $('undo').setAttribute('aria-disabled', at === 0);
    $('redo').setAttribute('aria-disabled', at === history.length - 1);
    $('reset').setAttribute('aria-disabled', parts.length === 0);
  }
  const knobNames = {};
  const nameOf = (path) => knobNames[path] || path;

  // ---- knobs

  const knobs = [];

  function inUnits(key, n) {
    return us && key.us ? n * key.us[2] + key.us[3] : n;
  }
  function unitWord(key) {
    return key.unit ? (us ? key.us[1] : key.unit[1]) : '';
  }
  function short(n, step) {
    if (n === null || !Number.isFinite(n)) return '';
    const d = step >= 1 && !us ? 1 : step >= 0.1 ? 2 : 3;
    return String(Number(n.toFixed(d)));
  }
  function textOf(key, n) {
    return key.unit ? short(inUnits(key, n), 0.1) + ' ' + (us ? key.us[0] : key.unit[0]) : String(n);
  }

  function makeKnobs() {
    rig.groups.forEach((group, i) => {
      const box = element('details', { open: i !== 1 && i !== 4 }, element('summary', { textContent: group.name }));
      for (const k of group.knobs) {
        const key = rig.keys[k.path];
        knobNames[k.path] = k.name;
        const id = 'k-' + k.path.replaceAll('.', '-');
        const range = element('input', { type: 'range', id, min: k.low, max: k.high, step: k.step });
        const field = element('input', { type: 'text', id: id + '-field', inputMode: 'decimal', autocomplete: 'off' });
        const unit = element('span');
        const hint = element('p', { className: 'hint', id: id + '-hint' });
        range.setAttribute('aria-describedby', hint.id);
        field.setAttribute('aria-describedby', hint.id);
        const holder = element('div', { className: 'knob' },
          element('label', { htmlFor: id, textContent: k.name }),
          element('span', { className: 'amount' }, field, unit), range, hint);
        range.addEventListener('input', () => set(k.path, textOf(key, Number(range.value)), true));
        range.addEventListener('change', () => { dragging = false; });
        field.addEventListener('change', () => {
          const typed = field.value.trim().replace('−', '-');
          const bare = /^[+-]?[\d.]+$/.test(typed);
          if (typed === '') set(k.path, null, false);
          else set(k.path, bare && key.unit ? typed + ' ' + (us ? key.us[0] : key.unit[0]) : typed, false);
        });
        box.append(holder);
        knobs.push({ ...k, key, range, field, unit, hint, holder });
      }
      $('knobs').append(box);
    });
    for (const path of Object.keys(rig.keys)) $('key-names').append(element('option', { value: path }));
  }

  /** What a text that was set means in the unit that the key is shown in. */
  function numberOf(key, text) {
    const parts = /^\s*([+-]?[\d.]+)\s*(.*)$/.exec(text);
    if (parts === null) return null;
    const n = Number(parts[1]);
    if (!key.unit || parts[2] === key.unit[0] || parts[2] === key.unit[1]) return n;
    return key.us && parts[2] === key.us[0] ? (n - key.us[3]) / key.us[2] : null;
  }

  function showKnobs() {
    for (const k of knobs) {
      const text = state().settings[k.path];
      const n = text === undefined ? k.key.number : numberOf(k.key, text) ?? k.key.number;
      if (document.activeElement !== k.range && n !== null) k.range.value = n;
      const name = unitWord(k.key);
      k.range.setAttribute('aria-valuetext', n === null ? k.key.value : short(inUnits(k.key, n), k.step) + ' ' + name);
      if (document.activeElement !== k.field) k.field.value = n === null ? k.key.value : short(inUnits(k.key, n), k.step);
      k.field.setAttribute('aria-label', k.name + (name ? ', ' + name : ''));
      k.unit.textContent = name;
      k.holder.classList.toggle('turned', text !== undefined);
      k.hint.textContent = k.key.help + ' ' + bounds(k.key) + ' In the file: ' + fileWords(k) + '.' +
        (k.key.usual && k.key.usual !== k.fileText ? ' Usual: ' + k.key.usual.replaceAll('`', '') + '.' : '');
    }
  }
  function bounds(key) {
    const unit = unitWord(key);
    const low = key.low === null ? null : short(inUnits(key, key.low), 0.1);
    const high = key.high === null ? null : short(inUnits(key, key.high), 0.1);
    if (low !== null && high !== null) return low + ' to ' + high + (unit ? ' ' + unit : '') + '.';
    return low !== null ? 'At least ' + low + ' ' + unit + '.' : high !== null ? 'At most ' + high + ' ' + unit + '.' : '';
  }
  function fileWords(k) {
    if (k.fileNumber === null || !Number.isFinite(k.fileNumber)) return k.fileText || 'nothing';
    const unit = unitWord(k.key);
    return short(inUnits(k.key, k.fileNumber), 0.1) + (unit ? ' ' + unit : '') + (k.fileAssumed ? ', assumed' : '');
  }

  // ---- pictures

  let charts = [];
  const colour = (name) => getComputedStyle(root).getPropertyValue('--' + name).trim();

  const PLANS = [
    { id: 'chart-brood', title: 'Brood comb', unit: 't', height: 210, band: true, lines: [
      { column: 'set_point_c', label: 'set point at work', colour: 'set', dash: [9, 5], width: 1.2 },
      { column: 'brood_c', label: 'brood before', colour: 'ink-soft', dash: [4, 3], width: 1.3, before: true },
      { column: 'brood_c', label: 'brood now', colour: 'brood', dash: [], width: 2.2 }] },
    { id: 'chart-around', title: 'Outdoors and pan', unit: 't', height: 140, lines: [
      { column: 'outdoor_c', label: 'outdoors', colour: 'outdoor', dash: [2, 3], width: 1.6 },
      { column: 'pan_c', label: 'pan before', colour: 'ink-soft', dash: [4, 3], width: 1.3, before: true },
      { column: 'pan_c', label: 'pan now', colour: 'pan', dash: [], width: 1.8 }] },
    { id: 'chart-battery', title: 'Battery', unit: '%', height: 140, range: [0, 100], lines: [
      { column: 'soc', label: 'charge before', colour: 'ink-soft', dash: [4, 3], width: 1.3, before: true, factor: 100 },
      { column: 'soc', label: 'charge now', colour: 'soc', dash: [], width: 2.2, factor: 100 }] },
    { id: 'chart-power', title: 'Panel and heater, means of an hour', unit: 'W', height: 140, lines: [
      { column: 'pv_w', label: 'panel', colour: 'pv', dash: [2, 3], width: 1.6, hourly: true },
      { column: 'heater_w', label: 'heater before', colour: 'ink-soft', dash: [4, 3], width: 1.3, before: true, hourly: true },
      { column: 'heater_w', label: 'heater now', colour: 'heater', dash: [], width: 2, hourly: true }] },
  ];

  function values(line) {
    const run = line.before ? before : now;
    const rows = now.rows;
    if (run === null || run.rows !== rows || run.start !== now.start) return new Array(rows).fill(null);
    const column = run.column[line.column];
    const u = line.column.endsWith('_c') ? rig.units.t : null;
    const factor = u !== null && us ? u[0] : line.factor || 1;
    const shift = u !== null && us ? u[1] : 0;
    const out = new Array(rows);
    if (!line.hourly) {
      for (let i = 0; i < rows; i++) out[i] = Number.isNaN(column[i]) ? null : column[i] * factor + shift;
      return out;
    }
    const many = Math.max(1, Math.round(3600 / run.step));
    for (let from = 0; from < rows; from += many) {
      const to = Math.min(rows, from + many);
      let sum = 0;
      for (let i = from; i < to; i++) sum += column[i];
      out.fill(sum / (to - from) * factor, from, to);
    }
    return out;
  }

  function dayWords(s) {
    const d = new Date(s * 1000);
    return s % 86400 === 0 ? d.getUTCDate() + ' ' + MONTHS[d.getUTCMonth()] : two(d.getUTCHours()) + ':' + two(d.getUTCMinutes());
  }

  function makeCharts() {
    charts.forEach((c) => c.plot.destroy());
    charts = [];
    const ink = colour('ink');
    const times = Array.from({ length: now.rows }, (_, i) => now.start + i * now.step);
    for (const plan of PLANS) {
      const box = $(plan.id);
      const key = element('ul', { className: 'key' });
      for (const line of plan.lines) {
        const stroke = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
        stroke.setAttribute('class', 'stroke');
        stroke.setAttribute('viewBox', '0 0 34 10');
        stroke.setAttribute('aria-hidden', 'true');
        const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
        path.setAttribute('d', 'M0 5H34');
        path.setAttribute('stroke', colour(line.colour));
        path.setAttribute('stroke-width', line.width);
        path.setAttribute('stroke-dasharray', line.dash.join(' '));
        stroke.append(path);
        key.append(element('li', {}, stroke, element('span', { textContent: line.label })));
      }
      const unit = plan.unit === 't' ? rig.units.t[us ? 3 : 2] : plan.unit;
      const frame = element('div', { className: 'plot' });
      box.replaceChildren(element('h3', { textContent: plan.title + ', ' + unit }), key, frame);
      const axis = { stroke: ink, grid: { stroke: colour('rule'), width: 1 }, ticks: { stroke: colour('edge') }, font: '12px system-ui, sans-serif' };
      const plot = new uPlot({
        width: Math.max(200, frame.clientWidth), height: plan.height, tzDate: (s) => uPlot.tzDate(new Date(s * 1000), 'UTC'),
        cursor: { drag: { x: false, y: false }, y: false }, legend: { show: false },
        scales: { x: {}, y: plan.range ? { range: plan.range } : {} },
        axes: [{ ...axis, values: (u, ticks) => ticks.map(dayWords) }, { ...axis, size: 46 }],
        series: [{}, ...plan.lines.map((l) => ({ stroke: colour(l.colour), width: l.width, dash: l.dash, points: { show: false } }))],
        hooks: { drawClear: [(u) => shade(u, plan)] },
      }, [times, ...plan.lines.map(values)], frame);
      const here = element('div', { className: 'here' });
      plot.over.append(here);
      plot.over.addEventListener('click', (e) => {
        go(plot.posToVal(e.clientX - plot.over.getBoundingClientRect().left, 'x') - now.start);
      });
      charts.push({ plan, plot, here });
    }
  }

  /** Nights, and the band that the brood needs. */
  function shade(u, plan) {
    const { ctx } = u;
    const { left, top, width, height } = u.bbox;
    ctx.save();
    ctx.fillStyle = colour('night');
    const ghi = now.column.ghi_w_m2;
    let since = -1;
    for (let i = 0; i <= ghi.length; i++) {
      const dark = i < ghi.length && ghi[i] < 1;
      if (dark && since < 0) since = i;
      if (!dark && since >= 0) {
        const x = u.valToPos(now.start + since * now.step, 'x', true);
        ctx.fillRect(x, top, u.valToPos(now.start + i * now.step, 'x', true) - x, height);
        since = -1;
      }
    }
    if (plan.band) {
      const t = rig.units.t;
      const edge = (c) => u.valToPos(us ? c * t[0] + t[1] : c, 'y', true);
      ctx.fillStyle = colour('band');
      const y = Math.max(top, edge(now.band[1]));
      ctx.fillRect(left, y, width, Math.min(top + height, edge(now.band[0])) - y);
    }
    ctx.restore();
  }

  let looks = '';

  function draw() {
    showVerdict();
    const like = [now.rows, now.start, us, root.dataset.theme, innerWidth].join();
    if (charts.length === 0 || looks !== like) {
      looks = like;
      makeCharts();
    } else {
      const times = charts[0].plot.data[0];
      for (const c of charts) c.plot.setData([times, ...c.plan.lines.map(values)]);
    }
    if (now.section !== null && $('cut').dataset.svg !== now.section.svg) {
      $('cut').innerHTML = now.section.svg;
      $('cut').dataset.svg = now.section.svg;
    }
    heatKey();
    $('moment').max = now.rows - 1;
    $('moment').step = 1;
    kinds();
    $('command').value = now.command;
    put($('lead'), now.lead);
    $('flags').replaceChildren(...now.flags.map((f) => {
      const li = element('li');
      put(li, f);
      return li;
    }));
    $('weather').textContent = 'Weather: ' + now.weather + '.';
    if (root.dataset.shown === undefined) {
      root.dataset.shown = 'yes';
      if (moment === 0 && now.worst !== null) moment = now.worst;
    }
    go(moment);
  }

  function heatKey() {
    const s = now.section;
    if (s === null) return;
    const w = 330 / s.colours.length;
    let svg = '<svg class="section heat-key" viewBox="0 0 380 34" role="img" aria-label="Colours from cold, dark blue, to warm, pale yellow">';
    s.colours.forEach((c, i) => {
      svg += '<rect fill="' + c + '" x="' + (24 + i * w).toFixed(2) + '" y="2" width="' + (w + 0.3).toFixed(2) + '" height="12"/>';
    });
    for (let c = s.low; c <= s.high; c += s.high - s.low > 60 ? 20 : 10) {
      svg += '<text class="tick" x="' + (24 + 330 * (c - s.low) / (s.high - s.low)).toFixed(1) + '" y="28">' + amount('t', c, 0).replace('.0 ', ' ') + '</text>';
    }
    $('heat-key').innerHTML = svg + '</svg>';
  }

  function showVerdict() {
    const headline = $('headline');
    headline.textContent = now.headline;
    headline.className = 'headline ' + (now.requirements.length === 0 ? 'open' : now.met ? 'met' : 'missed');
    $('state').textContent = now.inFull
      ? 'Run in full, for colonies that lose little, usual and much heat.'
      : 'Quick look; the run in full follows.';
    $('requirements').replaceChildren(...now.requirements.map((r) => {
      const words = { met: 'met', depends: 'depends on the colony', missed: 'missed' }[r.state];
      // a quick look is compared with a quick look: the two differ a little by themselves
      const was = ((now.inFull ? lookedBefore.full : lookedBefore.quick) || []).find((b) => b.kind === r.kind);
      const li = element('li', { className: r.state });
      const better = was === undefined || was.number === null || r.number === null || was.number === r.number ? ''
        : (r.number > was.number) === r.atLeast ? ', better now' : ', worse now';
      put(li, r.mark + '<span>' + r.name + ' <b>' + r.value + '</b><span class="' + (r.state === 'met' ? 'unseen' : 'word') + '">, ' + words + '</span> <span class="wanted">' + r.wanted + '</span>' +
        (was !== undefined && was.value !== r.value ? '<span class="was">was ' + was.value + better + '</span>' : '') + '</span>');
      return li;
    }));
  }

  function showRemedies(found) {
    put($('mend-words'), found.words);
    put($('mend-how'), found.how);
    $('mend-list').replaceChildren(...found.list.slice(0, 5).map((r) => {
      const what = element('p');
      put(what, '<b>' + r.what + '.</b> ' + r.effects + '.' + (r.reach ? ' <b class="word">' + r.reach + '.</b>' : ''));
      const button = element('button', { type: 'button', textContent: 'Try it' });
      button.addEventListener('click', () => {
        const settings = { ...state().settings };
        for (const s of r.settings) settings[s.slice(0, s.indexOf('='))] = s.slice(s.indexOf('=') + 1);
        change({ settings, faults: state().faults }, false);
        $('verdict').scrollIntoView({ block: 'start' });
      });
      return element('li', {}, what, button);
    }));
  }

  // ---- the film

  let ticks = null; // a few minutes tick by tick: names, rows, and the run that they are of

  /** The row of the tick at the moment shown, where it was fetched. */
  function tickRow() {
    if (ticks === null || ticks.of !== linesOf(state()).join()) return undefined;
    return ticks.rows[Math.round((moment - ticks.rows[0][0]) / ticks.length)];
  }
  async function tickOn() {
    const key = linesOf(state()).join();
    const last = ticks !== null && ticks.of === key ? ticks.rows[ticks.rows.length - 1][0] : -1;
    if (last < 0 || moment < ticks.rows[0][0] || moment + ticks.length > last) {
      $('event').textContent = 'Working out the ticks …';
      try {
        const got = await (await ask('ticks', [String(Math.floor(moment)), ...linesOf(state())])).json();
        if (got.rows.length < 2) {
          $('event').textContent = 'The controller has no tick there.';
          return;
        }
        ticks = { ...got, of: key, length: got.rows[1][0] - got.rows[0][0] };
      } catch (e) {
        failed(e);
        return;
      }
    }
    go(moment + ticks.length);
    const d = new Date((now.start + moment) * 1000);
    $('event').textContent = 'Tick at ' + timeWords(moment) + ':' + two(d.getUTCSeconds()) + ', every ' + lengthWords(ticks.length) + '. The words are of this tick, the drawing of its minute.';
  }

  function value(name) {
    const tick = tickRow();
    if (tick !== undefined && Number(tick[0]) === moment && ticks.names.includes(name)) {
      const v = tick[ticks.names.indexOf(name)];
      return v === null ? NaN : v;
    }
    const c = now.column[name];
    return c === undefined ? NaN : c[Math.min(c.length - 1, row())];
  }
  const row = () => Math.max(0, Math.min(now.rows - 1, Math.floor(moment / now.step + 1e-9)));

  function go(seconds) {
    moment = Math.max(0, Math.min((now.rows - 1) * now.step, seconds));
    $('when').textContent = timeWords(moment);
    if (document.activeElement !== $('moment') || Number($('moment').value) !== row()) $('moment').value = row();
    $('moment').setAttribute('aria-valuetext', timeWords(moment));
    for (const c of charts) c.here.style.left = c.plot.valToPos(now.start + moment, 'x') + 'px';
    drawSection();
    drawSky();
    drawSupply();
    think();
  }

  function drawSection() {
    const s = now.section;
    if (s === null) return;
    const at = (name) => {
      const c = now.column['section ' + name];
      return c === undefined ? NaN : c[Math.max(0, Math.min(c.length - 1, Math.round(moment / s.step) - 1))];
    };
    for (const el of all('#cut [data-c]')) {
      const share = (at(el.dataset.c) - s.low) / (s.high - s.low);
      const step = Math.max(0, Math.min(s.colours.length - 1, Math.floor(share * s.colours.length)));
      el.setAttribute('fill', Number.isNaN(share) ? 'none' : s.colours[step]);
    }
    for (const el of all('#cut [data-n]')) {
      const kind = el.dataset.k;
      const v = kind === 'co2' ? value('co2_percent') : at(el.dataset.n);
      el.textContent = Number.isNaN(v) ? 'none' : kind === 't' ? amount('t', v, 1) : kind === 'rh' ? digits(v, 0) + ' % RH' : digits(v, 1) + ' % CO₂';
    }
    for (const el of all('#cut [data-wet]')) {
      el.setAttribute('visibility', at(el.dataset.wet + '_wet') > s.wet ? 'visible' : 'hidden');
    }
    for (const el of all('#cut [data-box]')) {
      el.setAttribute('visibility', Number.isNaN(at('air' + el.dataset.box)) ? 'hidden' : 'visible');
    }
  }

  function drawSky() {
    const ghi = value('ghi_w_m2');
    const direct = value('direct_w_m2');
    const rain = value('rain_mm_h');
    const night = ghi < 1;
    $('sky-ground').setAttribute('class', night ? 'night' : 'day');
    $('sun').setAttribute('visibility', night ? 'hidden' : 'visible');
    $('sun').setAttribute('r', 9 + 9 * Math.min(1, ghi / 900));
    // direct light is what clouds take first
    const cloudy = night ? rain > 0.05 : direct < 120;
    $('cloud').setAttribute('visibility', cloudy ? 'visible' : 'hidden');
    $('rain').setAttribute('visibility', rain > 0.05 ? 'visible' : 'hidden');
    $('sky-air').textContent = amount('t', value('outdoor_c'), 1);
    const snow = value('outdoor_c') < 1;
    $('sky-sun').textContent = (night ? 'night' : (cloudy ? 'overcast' : 'sun') + ', ' + digits(ghi, 0) + ' W/m²') +
      (rain > 0.05 ? (snow ? ', snow' : ', rain') : '');
    $('sky-wind').textContent = 'wind ' + amount('ms', value('wind_m_s'), 1);
  }

  function drawSupply() {
    const pv = value('pv_w');
    const heat = value('heater_w');
    const load = value('load_w');
    const soc = value('soc');
    const wide = (w) => (w < 0.3 ? 0 : 1.5 + Math.min(12, w / 8));
    $('flow-in').setAttribute('stroke-width', wide(pv));
    $('flow-heat').setAttribute('stroke-width', wide(heat));
    $('flow-other').setAttribute('stroke-width', wide(load - heat));
    for (const id of ['flow-in', 'flow-heat', 'flow-other']) {
      const el = $(id);
      el.style.strokeWidth = el.getAttribute('stroke-width');
    }
    $('charge').setAttribute('y', 12 + 36 * (1 - soc));
    $('charge').setAttribute('height', 36 * soc);
    $('s-panel').textContent = digits(pv, 0) + ' W';
    $('s-soc').textContent = digits(100 * soc, 0) + ' %, ' + (value('battery_a') > 0.05 ? 'filling' : value('battery_a') < -0.05 ? 'giving' : 'resting');
    $('s-volts').textContent = digits(value('battery_v'), 2) + ' V';
    $('s-heat').textContent = heat < 0.1 ? 'off' : digits(heat, 0) + ' W';
    $('s-load').textContent = digits(load, 1) + ' W';
    $('s-fan').textContent = value('fan_on') > 0 ? 'fan runs' : 'fan rests';
    $('s-mains').textContent = rig.keys['shore.power'] && rig.keys['shore.power'].number > 0 ? (value('shore') > 0 ? 'mains there' : 'mains gone') : '';
    $('s-dead').textContent = value('dead') > 0 ? 'No power: the controller is dark.' : '';
  }

  /** Reports speak of the past, the film of the present. */
  const present = (words) => words.replace('there had been', 'there have been').replace(/\bwas\b/g, 'is').replace(/\bwere\b/g, 'are')
    .replace('ended', 'has ended').replace(/\bshowed\b/, 'shows').replace('could not', 'cannot');

  let thought = '';

  function think() {
    const lines = [];
    const say = (words, kind) => lines.push([words, kind || '']);
    if (value('dead') > 0) {
      say('It has no power and thinks nothing.', 'wrong');
    } else {
      const reading = value('governing_c');
      const works = value('set_point_c');
      say(Number.isNaN(reading) ? 'It trusts no brood probe.' : 'It reads ' + amount('t', reading, 1) + ' at the brood' +
        (Number.isNaN(works) ? '.' : ' and works to ' + amount('t', works, 1) + '.'), Number.isNaN(reading) ? 'wrong' : '');
      const reason = value('heater_reason');
      const left = reason === 13 ? value('min_off_left_s') : reason === 15 ? value('min_on_left_s') : reason === 9 ? value('service_left_s') : 0;
      const on = value('heater_on') > 0;
      const last = value('heater_stop_reason');
      say('Heater ' + (on ? 'on' : 'off') + ': ' + present(rig.reasons[reason]) + (left > 0 ? ', ' + lengthWords(left) + ' left' : '') + '.' +
        (!on && reason === 0 && last > 0 ? ' It last stopped because ' + rig.reasons[last] + '.' : ''), reason === 0 ? '' : 'held');
      for (const [name, words, code] of [['min_off_left_s', 'Minimum off', 13], ['min_on_left_s', 'Minimum on', 15]]) {
        if (value(name) > 0 && reason !== code) say(words + ' runs: ' + lengthWords(value(name)) + ' left.');
      }
      if (value('isolated') > 0) say('The series switch of the heater is open.', 'wrong');
      const fan = value('fan_reason');
      const runs = value('fan_on') > 0;
      say('Fan ' + (runs ? 'on' : 'off') + (fan === 0 ? (runs ? ': to cool.' : ': not wanted.') : ': ' + present(rig.reasons[fan]) + '.'), fan === 0 || runs ? '' : 'held');
      const shed = value('shed_level');
      if (shed > 0) say('To spare the battery: ' + rig.sheds[shed].replaceAll('_', ' ') + '.', 'held');
      const bits = value('alarms_low') + value('alarms_high') * 2 ** rig.alarmBits;
      rig.alarms.forEach((name, bit) => {
        if (Math.floor(bits / 2 ** bit) % 2 === 1) say('Alarm: ' + name.replaceAll('_', ' ') + '.', 'wrong');
      });
    }
    const text = JSON.stringify(lines);
    if (text === thought) return;
    thought = text;
    $('thoughts').replaceChildren(...lines.map(([words, kind]) => element('li', { className: kind, textContent: words })));
  }

  let playing = false;
  let lastMs = 0;
  const still = matchMedia('(prefers-reduced-motion: reduce)');

  function frame(ms) {
    if (!playing) return;
    const wait = still.matches ? 500 : 0;
    if (ms - lastMs >= wait) {
      const passedS = Math.min(1, (ms - lastMs) / 1000);
      lastMs = ms;
      const speed = Number($('speed').value);
      const end = (now.rows - 1) * now.step;
      go(moment + (speed === 0 ? end / 400 : speed * passedS));
      if (moment >= end) pause();
    }
    requestAnimationFrame(frame);
  }
  function play() {
    if (moment >= (now.rows - 1) * now.step) moment = 0;
    playing = true;
    $('play').textContent = 'Pause';
    lastMs = performance.now();
    requestAnimationFrame(frame);
  }
  function pause() {
    playing = false;
    $('play').textContent = 'Play';
    keep();
  }

  // ---- events

  const SWITCHINGS = ['heater', 'fan', 'heat held off'];
  const ROW = 5;
  function kinds() {
    const w = now.events.words;
    const names = new Set();
    for (let i = 1; i < now.events.rows.length; i += ROW) names.add(w[now.events.rows[i]]);
    const wanted = $('kind').value;
    $('kind').replaceChildren(element('option', { value: '', textContent: 'any but heater and fan' }),
      ...[...names].sort().map((n) => element('option', { value: n, textContent: n.replaceAll('_', ' ') })));
    $('kind').value = names.has(wanted) ? wanted : '';
  }
  function jump(direction) {
    const { words, rows } = now.events;
    const kind = $('kind').value;
    let best = -1;
    for (let i = 0; i < rows.length; i += ROW) {
      const what = words[rows[i + 1]];
      if (kind === '' ? SWITCHINGS.includes(what) : what !== kind) continue;
      const off = rows[i] - moment;
      if (direction > 0 ? off >= now.step : off <= -now.step) {
        if (best < 0 || direction < 0) best = i;
      }
    }
    if (best < 0) {
      $('event').textContent = direction > 0 ? 'No later one.' : 'No earlier one.';
      return;
    }
    const from = words[rows[best + 2]];
    go(Math.floor(rows[best] / now.step) * now.step);
    $('event').textContent = timeWords(rows[best]) + ': ' + words[rows[best + 1]].replaceAll('_', ' ') +
      (from ? ' from ' + from.replaceAll('_', ' ') : '') + ' to ' + words[rows[best + 3]].replaceAll('_', ' ') + '; ' + words[rows[best + 4]] + '.';
    keep();
  }

  // ---- faults

  const BUTTONS = [
    ['probe_open', 'Brood probe out', ''], ['relay_welded', 'Relay welded', ''], ['fan_jammed', 'Fan jammed', ''],
    ['panel_covered', 'Snow on the panel', ''], ['lid_off', 'Lid off for 10 minutes', '10 min'], ['battery_aged', 'Battery aged', ''],
    ['stores_gone', 'Feed gone', ''], ['shore_lost', 'Mains gone', '']];
  const faultWords = (what) => (BUTTONS.find((b) => b[0] === what) || [0, what.replaceAll('_', ' ')])[1];

  function makeFaults() {
    const there = new Map(rig.faults);
    for (const [what, words, lasts] of BUTTONS) {
      if (!there.has(what)) continue;
      const button = element('button', { type: 'button', textContent: words });
      button.addEventListener('click', () => breaks({ what, lasts }));
      $('faults').append(button);
    }
    if (there.has('shore_lost')) {
      const button = element('button', { type: 'button', textContent: 'Mains back' });
      button.addEventListener('click', () => breaks({ what: 'shore_power', present: true }));
      $('faults').append(button);
    }
    $('fault-kind').replaceChildren(...rig.faults.map(([what]) => element('option', { value: what, textContent: what.replaceAll('_', ' ') })));
  }
  function breaks(fault) {
    const whole = Math.max(0, Math.round(moment));
    change({ settings: state().settings, faults: [...state().faults, { ...fault, at: whole }] }, false);
  }
  function showBroken() {
    const list = state().faults;
    $('broken').replaceChildren(...list.map((f, i) => {
      const li = element('li', {}, element('span', {
        textContent: (f.what === 'shore_power' ? 'Mains back' : faultWords(f.what)) + ' at ' + (now ? timeWords(f.at) : f.at + ' s') + (f.lasts ? ', for ' + f.lasts : ''),
      }));
      const without = element('button', { type: 'button', textContent: 'Take out' });
      without.setAttribute('aria-label', 'Take out: ' + faultWords(f.what));
      without.addEventListener('click', () => {
        change({ settings: state().settings, faults: list.filter((_, j) => j !== i) }, false);
        $('fault-add').focus();
      });
      if ((new Map(rig.faults)).get(f.what) && !f.lasts) {
        const mends = element('button', { type: 'button', textContent: 'Mended now' });
        mends.setAttribute('aria-label', 'Mended now: ' + faultWords(f.what));
        mends.addEventListener('click', () => {
          if (moment <= f.at) {
            $('event').textContent = 'It breaks only at ' + timeWords(f.at) + '. Go to a later moment first.';
            return;
          }
          change({ settings: state().settings, faults: list.map((x, j) => (j === i ? { ...x, lasts: Math.round(moment - f.at) + ' s' } : x)) }, false);
          $('fault-add').focus();
        });
        li.append(mends);
      }
      li.append(without);
      return li;
    }));
  }

  // ---- studies

  let watching = 0;

  function showStudy(s) {
    $('study-start').setAttribute('aria-disabled', s.running);
    $('study-stop').setAttribute('aria-disabled', !s.running);
    const share = /^(\d+) of (\d+)/.exec(s.progress);
    $('study-done').hidden = !s.running;
    $('study-done').value = share === null ? 0 : share[1] / share[2];
    const ends = s.stopped ? 'stopped; what was done is in the files, and Start goes on with it' : s.code === 2 ? 'was refused' : s.code === 3 ? 'failed' : 'is done';
    $('study-state').textContent = s.verb === '' ? '' : s.running
      ? s.verb + ': ' + (s.stopped ? 'ending …' : s.progress === '' ? 'getting ready …' : s.progress + '.')
      : s.verb + ' ' + ends + (s.progress && s.stopped ? ' (' + s.progress.split(',')[0] + ')' : '') + '.' + (s.report ? ' Files in ' + s.folder + '.' : '');
    $('study-text').hidden = s.printed === '';
    $('study-text').textContent = s.printed;
    $('study-report').hidden = !s.report;
    $('study-report').href = '/study/' + s.verb + '.html';
    clearTimeout(watching);
    if (s.running) watching = setTimeout(() => askStudy('study', []), 700);
  }
  async function askStudy(path, lines) {
    try {
      showStudy(await (await ask(path, lines)).json());
    } catch (e) {
      failed(e);
    }
  }

  // ---- start

  function listen() {
    $('study-start').addEventListener('click', () => {
      if ($('study-start').getAttribute('aria-disabled') !== 'true') askStudy('study/start', [$('study').value, ...linesOf(state())]);
    });
    $('study-stop').addEventListener('click', () => askStudy('study/stop', []));
    askStudy('study', []);
    $('undo').addEventListener('click', () => travel(-1));
    $('redo').addEventListener('click', () => travel(1));
    $('reset').addEventListener('click', () => {
      if (linesOf(state()).length > 0) change({ settings: {}, faults: [] }, false);
    });
    $('play').addEventListener('click', () => (playing ? pause() : play()));
    $('on').addEventListener('click', () => { go(moment + now.step); keep(); });
    $('tick').addEventListener('click', tickOn);
    $('back').addEventListener('click', () => { go(moment - now.step); keep(); });
    $('worst').addEventListener('click', () => { if (now.worst !== null) go(now.worst); keep(); });
    $('moment').addEventListener('input', () => { go(Number($('moment').value) * now.step); keep(); });
    $('earlier').addEventListener('click', () => jump(-1));
    $('later').addEventListener('click', () => jump(1));
    $('fault-add').addEventListener('click', () => {
      const what = $('fault-kind').value;
      const ends = new Map(rig.faults).get(what);
      breaks({ what, lasts: ends ? $('fault-for').value : '' });
    });
    $('copy').addEventListener('click', async () => {
      try {
        await navigator.clipboard.writeText($('command').value);
        $('taken').textContent = 'Copied.';
      } catch {
        $('command').focus();
        $('command').select();
        $('taken').textContent = 'Selected: press Ctrl-C to copy.';
      }
    });
    $('save').addEventListener('click', async () => {
      try {
        const answer = await ask('save', linesOf(state()));
        const name = /filename="([^"]*)"/.exec(answer.headers.get('Content-Disposition') || '');
        const link = element('a', { href: URL.createObjectURL(await answer.blob()), download: name === null ? 'scenario.toml' : name[1] });
        link.click();
        setTimeout(() => URL.revokeObjectURL(link.href), 1000);
        $('taken').textContent = 'Handed to the browser as ' + link.download + '. Put it beside the weather that it names, if any.';
      } catch (e) {
        failed(e);
      }
    });
    $('key-name').addEventListener('input', () => {
      const key = rig.keys[$('key-name').value];
      $('key-entry').hidden = key === undefined;
      $('key-help').textContent = key === undefined ? '' : key.help + ' ' + (key.choices.length > 0 ? 'One of: ' + key.choices.join(', ') + '.' : key.range ? 'Allowed: ' + key.range + '.' : '') +
        (key.usual ? ' Usual: ' + key.usual.replaceAll('`', '') + '.' : '');
      if (key !== undefined) $('key-value').value = state().settings[$('key-name').value] || key.value;
    });
    const setKey = () => set($('key-name').value, $('key-value').value.trim() || null, false);
    $('key-set').addEventListener('click', setKey);
    $('key-value').addEventListener('keydown', (e) => { if (e.key === 'Enter') setKey(); });
    for (const radio of all('input[name=units]')) {
      radio.addEventListener('change', () => {
        us = radio.value === 'us' && radio.checked;
        localStorage.setItem('units', us ? 'us' : 'metric');
        showKnobs();
        writeNumbers();
        draw();
      });
    }
    const dark = () => (root.dataset.theme ? root.dataset.theme === 'dark' : matchMedia('(prefers-color-scheme: dark)').matches);
    const named = () => { $('theme').textContent = dark() ? 'Light page' : 'Dark page'; };
    $('theme').addEventListener('click', () => {
      root.dataset.theme = dark() ? 'light' : 'dark';
      localStorage.setItem('theme', root.dataset.theme);
      named();
      draw();
    });
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => { looks = ''; named(); draw(); });
    named();
    let sizing = 0;
    addEventListener('resize', () => {
      clearTimeout(sizing);
      sizing = setTimeout(() => { if (now !== null) draw(); }, 100);
    });
  }

  async function start() {
    const theme = localStorage.getItem('theme');
    if (theme !== null) root.dataset.theme = theme;
    for (const radio of all('input[name=units]')) radio.checked = (radio.value === 'us') === us;
    try {
      rig = await (await ask('rig', [])).json();
    } catch (e) {
      failed(e);
      return;
    }
    $('title').textContent = rig.title + ' (' + rig.file + ')';
    document.title = rig.title + ' – Broodbench, live';
    if (rig.page !== '') {
      const kept = JSON.parse(rig.page);
      history = kept.history;
      at = kept.at;
      moment = kept.moment;
    }
    makeKnobs();
    for (const k of knobs) Object.assign(k, { fileNumber: k.key.number, fileText: k.key.value, fileAssumed: k.key.assumed });
    makeFaults();
    try {
      if (at > 0) {
        before = unpack(await (await ask('quick', linesOf(history[at - 1]))).arrayBuffer());
        lookedBefore = { quick: before.requirements };
      }
      now = unpack(await (await ask('quick', linesOf(state()))).arrayBuffer());
      looked = { quick: now.requirements };
    } catch (e) {
      failed(e);
      return;
    }
    listen();
    showChanged();
    showKnobs();
    draw();
    showBroken();
    root.dataset.firstMs = Math.round(performance.now());
    root.dataset.drawn = ++drawn;
    waiting = setTimeout(runFull, 200);
  }
  start();
})();
