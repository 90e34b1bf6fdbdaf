(() => {
  'use strict';
  const root = document.documentElement;
  root.classList.add('script');
  const $ = (id) => document.getElementById(id);
  const all = (selector, from) => [...(from || document).querySelectorAll(selector)];
  const run = JSON.parse($('run-data').textContent);

  // ---- numbers and units: value in US units = metric value * factor + shift

  let us = root.dataset.units === 'us';

  function digits(n, decimals) {
    if (!Number.isFinite(n)) return 'none';
    const text = Math.abs(n).toFixed(decimals);
    return n < 0 && Number(text) !== 0 ? '−' + text : text;
  }

  function inUnits(q, n) {
    const u = run.units[q];
    return us ? n * u[0] + u[1] : n;
  }

  const unitOf = (q) => run.units[q][us ? 3 : 2];

  function writeNumbers(from) {
    for (const el of all('data[data-q]', from)) {
      const d = Number(us && el.dataset.e !== undefined ? el.dataset.e : el.dataset.d);
      const text = digits(inUnits(el.dataset.q, Number(el.value)), d);
      el.textContent = el.dataset.b === undefined ? text + ' ' + unitOf(el.dataset.q) : text;
    }
    for (const el of all('[data-u]', from)) el.textContent = unitOf(el.dataset.u);
  }

  // ---- packed columns, see ColumnPacker

  function unpack(text, count) {
    const raw = atob(text);
    let at = 0;
    let left = 0;
    let byte = 0;
    const bit = () => {
      if (left === 0) {
        byte = raw.charCodeAt(at++);
        left = 8;
      }
      return (byte >> --left) & 1;
    };
    const bits = (n) => {
      let v = 0;
      for (let i = 0; i < n; i++) v = v * 2 + bit();
      return v;
    };
    const out = new Int32Array(count);
    let one = 0;
    let two = 0;
    for (let from = 0; from < count; from += run.block) {
      const to = Math.min(count, from + run.block);
      const order = bits(2);
      const k = order === 3 ? 0 : bits(4);
      for (let i = from; i < to; i++) {
        let v = one;
        if (order !== 3) {
          let quotient = 0;
          while (quotient < run.escape && bit() === 1) quotient++;
          const u = quotient < run.escape ? quotient * 2 ** k + bits(k) : bits(32);
          const rest = u % 2 === 0 ? u / 2 : -(u + 1) / 2;
          v = rest + (order === 0 ? 0 : order === 1 ? one : 2 * one - two);
        }
        out[i] = v;
        two = one;
        one = v;
      }
    }
    return out;
  }

  function column([perUnit, packed, gaps], rows) {
    const steps = unpack(packed, rows);
    const gap = gaps === undefined ? null : unpack(gaps, rows);
    return Array.from(steps, (s, i) => (gap !== null && gap[i] === 1 ? null : s / perUnit));
  }

  const times = new Float64Array(run.rows);
  for (let i = 0; i < run.rows; i++) times[i] = run.start + i * run.step;

  const columns = {};
  for (const [name, packed] of Object.entries(run.columns)) columns[name] = column(packed, run.rows);

  const hourRows = Math.max(1, Math.round(3600 / run.step));
  const hourly = {};
  function hourlyMeans(name) {
    if (hourly[name] === undefined) {
      const v = columns[name];
      const out = new Array(v.length);
      for (let from = 0; from < v.length; from += hourRows) {
        const to = Math.min(v.length, from + hourRows);
        let sum = 0;
        let n = 0;
        for (let i = from; i < to; i++) {
          if (v[i] !== null) {
            sum += v[i];
            n++;
          }
        }
        out.fill(n > 0 ? sum / n : null, from, to);
      }
      hourly[name] = out;
    }
    return hourly[name];
  }

  // ---- words for times

  const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const MONTH_NAMES = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August',
    'September', 'October', 'November', 'December'];
  const two = (n) => String(n).padStart(2, '0');
  const day = (d) => d.getUTCDate() + ' ' + MONTHS[d.getUTCMonth()];
  const clock = (d) => two(d.getUTCHours()) + ':' + two(d.getUTCMinutes());
  const moment = (s) => {
    const d = new Date(s * 1000);
    return day(d) + ' ' + clock(d);
  };

  // ---- colours come from the style sheet, so that pages and pictures agree

  let palette = {};
  function colour(name) {
    if (palette[name] === undefined) {
      palette[name] = getComputedStyle(root).getPropertyValue('--' + name).trim();
    }
    return palette[name];
  }

  const STROKES = {
    brood: [2.4, []],
    'probe-a': [1.3, [2, 3]],
    'probe-b': [1.3, [6, 2, 1, 2]],
    set: [1.4, [9, 5]],
    pan: [2.2, []],
    box: [1.5, [7, 3]],
    outdoor: [1.6, [2, 3]],
    heater: [1, []],
    fan: [1, []],
    shed: [1, []],
    soc: [2.4, []],
    volts: [1.4, [5, 3]],
    pv: [2.2, []],
    load: [1.4, [7, 3]],
    rh: [2, []],
    co2: [2, []],
  };

  // ---- charts

  const first = times[0];
  const last = times[run.rows - 1];
  const least = Math.min(last - first, Math.max(10 * run.step, 600));
  const FEW_DAYS = 3 * 86400;
  let shown = [first, last];
  let coarse = last - first > FEW_DAYS;
  let busy = false;
  const charts = [];

  function shownValues(line, index, count) {
    const smooth = coarse && (line.draw === 'MEAN' || line.draw === 'STRIP');
    const v = smooth ? hourlyMeans(line.column) : columns[line.column];
    if (line.draw === 'STRIP') {
      // strips stand over each other, the first line at the bottom of the key is the top strip
      const base = count - 1 - index;
      const full = line.column === 'shed_level' ? 5 : 1;
      return v.map((x) => (x === null ? null : base + (0.78 * x) / full));
    }
    if (line.q !== null) return v.map((x) => (x === null ? null : inUnits(line.q, x)));
    return line.factor === 1 ? v : v.map((x) => (x === null ? null : x * line.factor));
  }

  const dataOf = (plan) => [
    times,
    ...plan.lines.map((l, i) => shownValues(l, i, plan.lines.length)),
  ];

  function shade(u, plan) {
    const { ctx, bbox } = u;
    ctx.save();
    ctx.beginPath();
    ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.clip();
    ctx.fillStyle = colour('night');
    for (const [from, to] of run.nights) {
      const x0 = u.valToPos(times[from], 'x', true);
      const x1 = u.valToPos(times[to], 'x', true);
      ctx.fillRect(x0, bbox.top, x1 - x0, bbox.height);
    }
    if (plan.band) {
      const [low, high] = run.band.map((c) => u.valToPos(inUnits('t', c), 'y', true));
      ctx.fillStyle = colour('band');
      ctx.fillRect(bbox.left, high, bbox.width, low - high);
      ctx.strokeStyle = colour('band-edge');
      ctx.lineWidth = devicePixelRatio;
      ctx.setLineDash([4 * devicePixelRatio, 4 * devicePixelRatio]);
      for (const y of [low, high]) {
        ctx.beginPath();
        ctx.moveTo(bbox.left, y);
        ctx.lineTo(bbox.left + bbox.width, y);
        ctx.stroke();
      }
    }
    ctx.restore();
  }

  function yRange(plan, right) {
    if (plan.id === 'switches') return () => [-0.1, plan.lines.length];
    if (plan.id === 'humidity') return (u, low, high) => [0, Math.max(103, high)];
    return (u, low, high) => {
      if (low === null) return [0, 1];
      if (plan.band) {
        const [b0, b1] = run.band.map((c) => inUnits('t', c));
        low = Math.min(low, b0);
        high = Math.max(high, b1);
      }
      if (plan.id === 'battery' && !right) return [Math.max(0, Math.min(low, 100) - 5), 103];
      if (plan.id === 'power' || plan.id === 'co2') low = 0;
      const pad = Math.max((high - low) * 0.06, right ? 0.05 : plan.id === 'co2' ? 0.05 : 0.5);
      return [plan.id === 'power' || plan.id === 'co2' ? 0 : low - pad, high + pad];
    };
  }

  function timeLabels(u, splits, axis, space, step) {
    return splits.map((s) => {
      const d = new Date(s * 1000);
      const midnight = d.getUTCHours() === 0 && d.getUTCMinutes() === 0;
      return step >= 86400 || midnight ? day(d) : clock(d);
    });
  }

  // the highest number of a scale carries the unit
  function withUnit(splits, unit) {
    const step = splits.length > 1 ? splits[1] - splits[0] : 1;
    const d = step < 0.099 ? 2 : step < 0.99 ? 1 : 0;
    return splits.map((s, i) => digits(s, d) + (i === splits.length - 1 ? ' ' + unit : ''));
  }

  // the same room left and right in every chart, so that one moment stands in one line
  const LEFT_PX = 56;
  const RIGHT_PX = 58;
  const FONT = '12px system-ui, "DejaVu Sans", sans-serif';

  function build(plan) {
    const place = document.querySelector('.plot[data-chart="' + plan.id + '"]');
    const strips = plan.id === 'switches';
    const right = plan.lines.some((l) => l.draw === 'RIGHT');
    const ink = () => colour('ink-soft');
    const line = { stroke: () => colour('rule'), width: 1 };
    const ticks = { ...line, size: 4 };
    const axes = [
      {
        stroke: ink, grid: line, ticks, font: FONT, size: 34, space: 64,
        values: timeLabels,
      },
      {
        stroke: ink, grid: strips ? { show: false } : line, ticks, font: FONT, size: LEFT_PX,
        splits: strips ? () => plan.lines.map((l, i) => plan.lines.length - 1 - i + 0.39) : undefined,
        values: strips
          ? () => plan.lines.map((l) => l.label.split(' ')[0])
          : (u, splits) => withUnit(splits, plan.axis === 'temperature' ? unitOf('t') : plan.axis),
      },
    ];
    if (right) {
      axes.push({
        scale: 'right', side: 1, stroke: ink, grid: { show: false }, ticks, font: FONT, size: RIGHT_PX,
        values: (u, splits) => withUnit(splits, 'V'),
      });
    }
    const series = [{}];
    plan.lines.forEach((l, i) => {
      const [width, dash] = STROKES[l.style];
      const held = l.draw === 'STEP' || l.draw === 'STRIP' || l.draw === 'MEAN';
      series.push({
        scale: l.draw === 'RIGHT' ? 'right' : 'y',
        stroke: () => colour(l.style),
        fill: l.draw === 'STRIP' ? () => colour(l.style + '-fill') : undefined,
        fillTo: l.draw === 'STRIP' ? () => plan.lines.length - 1 - i : undefined,
        width, dash,
        points: { show: false },
        paths: held ? uPlot.paths.stepped({ align: 1 }) : undefined,
      });
    });
    const u = new uPlot(
      {
        width: place.clientWidth, height: plan.height,
        padding: [10, right ? 0 : innerWidth < 500 ? 12 : RIGHT_PX, 0, 0],
        tzDate: (s) => uPlot.tzDate(new Date(s * 1000), 'Etc/UTC'),
        legend: { show: false },
        cursor: {
          y: false,
          points: strips ? { show: false } : {},
          drag: { x: true, y: false },
          sync: {
            key: 'run', setSeries: false, scales: ['x', null],
            filters: { pub: (type) => type === 'mousemove' || type === 'mouseleave' },
          },
        },
        scales: {
          x: { time: true },
          y: { range: yRange(plan, false) },
          ...(right ? { right: { range: yRange(plan, true) } } : {}),
        },
        axes, series,
        hooks: {
          drawClear: [(c) => shade(c, plan)],
          draw: [(c) => nameScale(c, plan, place)],
          setScale: [(c, key) => {
            if (key === 'x' && !busy) show(c.scales.x.min, c.scales.x.max);
          }],
          setCursor: [(c) => tell(c, plan)],
        },
      },
      dataOf(plan), place);
    charts.push({ plan, u, place });
  }

  // what is drawn, for those who do not see it
  function nameScale(u, plan, place) {
    const { x, y } = u.scales;
    place.dataset.shown = x.min + ' ' + x.max;
    const unit = plan.axis === 'temperature' ? unitOf('t') : plan.axis;
    place.setAttribute('aria-label',
      document.getElementById('title-' + plan.id).textContent +
      ' from ' + moment(x.min) + ' to ' + moment(x.max) +
      (plan.id === 'switches' ? '' :
        ', scale from ' + digits(y.min, 1) + ' to ' + digits(y.max, 1) + ' ' + unit) +
      '; the numbers are in the table after it');
  }

  function valueText(l, x) {
    if (x === null) return 'none';
    if (l.column === 'shed_level') return digits(x, coarse ? 1 : 0) + ' of 5';
    if (l.draw === 'STRIP') {
      return coarse ? digits(100 * x, 0) + ' % of the hour' : x > 0.5 ? 'on' : 'off';
    }
    if (l.q !== null) return digits(inUnits(l.q, x), us ? l.e : l.d) + ' ' + unitOf(l.q);
    return digits(x * l.factor, l.d) + ' ' + l.unit;
  }

  // ---- the hive cut open, one picture every ten minutes

  const cut = run.section;
  const cutColumns = {};
  if (cut !== null) {
    for (const [name, packed] of Object.entries(cut.columns)) {
      cutColumns[name] = column(packed, cut.rows);
    }
  }
  const WET = 0.05;

  function heat(c) {
    if (c === null) return 'none';
    const n = cut.colours.length;
    const step = Math.floor(((c - cut.low) / (cut.high - cut.low)) * n);
    return cut.colours[Math.max(0, Math.min(n - 1, step))];
  }

  function partText(kind, v) {
    if (v === null || v === undefined) return 'none';
    if (kind === 't') return digits(inUnits('t', v), 1) + ' ' + unitOf('t');
    if (kind === 'rh') return digits(v, 0) + ' % RH';
    if (kind === 'co2') return digits(v, 1) + ' % CO₂';
    return v > WET ? digits(v, 1) + ' g/h' : v < -WET ? 'drying' : 'dry';
  }

  function cutOpen(i) {
    if (cut === null) return;
    const seconds = times[i] - first;
    const row = Math.max(0, Math.min(cut.rows - 1, Math.round(seconds / cut.step) - 1));
    const at = first + (row + 1) * cut.step;
    for (const el of all('#section [data-c]')) {
      el.setAttribute('fill', heat(cutColumns[el.dataset.c][row]));
    }
    const trace = Math.max(0, Math.min(run.rows - 1, Math.round((at - first) / run.step)));
    for (const el of all('#section [data-n]')) {
      const v = el.dataset.k === 'co2'
        ? columns.co2_percent && columns.co2_percent[trace] : cutColumns[el.dataset.n][row];
      el.textContent = partText(el.dataset.k, v);
    }
    for (const el of all('#section [data-wet]')) {
      const wet = cutColumns[el.dataset.wet + '_wet'][row] > WET;
      el.setAttribute('visibility', wet ? 'visible' : 'hidden');
    }
    for (const el of all('#section [data-box]')) {
      const there = cutColumns['air' + el.dataset.box][row] !== null;
      el.setAttribute('opacity', there ? '1' : '0.15');
    }
    for (const el of all('#section [data-of-box]')) {
      const there = cutColumns['air' + el.dataset.ofBox][row] !== null;
      el.setAttribute('visibility', there ? 'visible' : 'hidden');
    }
    for (const el of all('#section [data-t]')) {
      el.textContent = digits(inUnits('t', Number(el.dataset.t)), 0) + ' ' + unitOf('t');
    }
    const d = new Date(at * 1000);
    $('section-moment').textContent =
      d.getUTCDate() + ' ' + MONTH_NAMES[d.getUTCMonth()] + ' at ' + clock(d) + ' UTC';
    $('section-worst').hidden = run.worst === null || Math.abs(at - run.worst) > cut.step;
  }

  let told = -1;
  function tell(u, plan) {
    const i = u.cursor.idx;
    if (i === null || i === undefined) return;
    for (const button of all('.key button[data-chart="' + plan.id + '"]')) {
      const l = plan.lines[Number(button.dataset.line)];
      const smooth = coarse && (l.draw === 'MEAN' || l.draw === 'STRIP');
      const v = (smooth ? hourlyMeans(l.column) : columns[l.column])[i];
      button.querySelector('.now').textContent = valueText(l, v);
    }
    if (i !== told) {
      told = i;
      const text = moment(times[i]);
      $('moment-text').textContent = text + ' UTC';
      $('moment').value = String(i);
      cutOpen(i);
      const c = columns.brood_c && columns.brood_c[i];
      $('moment').setAttribute('aria-valuetext',
        text + (c === null || c === undefined ? '' :
          ', brood comb ' + digits(inUnits('t', c), 1) + ' ' + unitOf('t')));
    }
  }

  function point(i) {
    for (const { u } of charts) {
      u.setCursor({ left: u.valToPos(times[i], 'x'), top: 5 }, true, false);
    }
  }

  const rowOf = (s) => Math.max(0, Math.min(run.rows - 1, Math.round((s - first) / run.step)));

  function show(from, to) {
    let width = Math.max(least, Math.min(to - from, last - first));
    let middle = (from + to) / 2;
    let a = Math.max(first, Math.min(last - width, middle - width / 2));
    shown = [a, a + width];
    const wasCoarse = coarse;
    coarse = width > FEW_DAYS;
    busy = true;
    for (const { u, plan } of charts) {
      u.batch(() => {
        if (wasCoarse !== coarse) u.setData(dataOf(plan), false);
        u.setScale('x', { min: shown[0], max: shown[1] });
      });
    }
    busy = false;
    describe();
  }

  function describe() {
    $('range').textContent = moment(shown[0]) + ' to ' + moment(shown[1]);
    const slider = $('moment');
    slider.min = String(rowOf(shown[0]));
    slider.max = String(rowOf(shown[1]));
    slider.step = String(Math.max(1, Math.round((slider.max - slider.min) / 400)));
    const whole = shown[1] - shown[0] >= last - first - 1;
    disable('zoom-out', whole);
    disable('whole', whole);
    disable('zoom-in', shown[1] - shown[0] <= least + 1);
    disable('earlier', shown[0] <= first + 1);
    disable('later', shown[1] >= last - 1);
  }

  // not "disabled": that would throw the focus away under the keeper's finger
  const disable = (id, off) => $(id).setAttribute('aria-disabled', String(off));

  function zoom(factor) {
    const half = ((shown[1] - shown[0]) * factor) / 2;
    const middle = (shown[0] + shown[1]) / 2;
    show(middle - half, middle + half);
  }

  function pan(share) {
    const by = (shown[1] - shown[0]) * share;
    show(shown[0] + by, shown[1] + by);
  }

  function showDay(from, to) {
    show(from, to);
    $('charts-h').scrollIntoView({ block: 'start' });
  }

  function redraw() {
    palette = {};
    for (const { u, plan } of charts) {
      u.setData(dataOf(plan), false);
      busy = true;
      u.batch(() => u.setScale('x', { min: shown[0], max: shown[1] }));
      busy = false;
      u.redraw(false, true);
    }
    const i = told;
    if (i >= 0) {
      told = -1;
      point(i);
    }
  }

  function resize() {
    for (const { u, place, plan } of charts) {
      const width = place.clientWidth;
      if (width > 0 && width !== u.width) u.setSize({ width, height: plan.height });
    }
  }

  run.charts.forEach(build);
  describe();
  // charts draw a moment later, so the first moment is picked after that
  requestAnimationFrame(() => point(run.worst === null ? 0 : rowOf(run.worst)));
  // a picture may be drawn before the page has its final width
  addEventListener('resize', resize);
  resize();

  $('zoom-in').onclick = () => zoom(0.5);
  $('zoom-out').onclick = () => zoom(2);
  $('earlier').onclick = () => pan(-0.5);
  $('later').onclick = () => pan(0.5);
  $('whole').onclick = () => show(first, last);
  $('worst').onclick = () => {
    show(run.worst - 12 * 3600, run.worst + 12 * 3600);
    point(rowOf(run.worst));
  };
  if (run.worst === null) $('worst').hidden = true;
  $('moment').oninput = (e) => point(Number(e.target.value));
  for (const b of all('.key button')) {
    b.onclick = () => {
      const on = b.getAttribute('aria-pressed') !== 'true';
      b.setAttribute('aria-pressed', String(on));
      const chart = charts.find((c) => c.plan.id === b.dataset.chart);
      chart.u.setSeries(Number(b.dataset.line) + 1, { show: on });
    };
  }

  for (const b of all('button.day')) {
    b.onclick = () => showDay(Number(b.dataset.from), Number(b.dataset.from) + 86400);
  }

  // ---- events: [second, what, from, to, reason] in one flat row, words by number

  const MORE = 200;
  const SWITCHED = /^(-?[\d.]+) (°C|cm²)$/;
  const events = [];
  for (let i = 0; i < run.events.rows.length; i += 5) {
    const [at, ...words] = run.events.rows.slice(i, i + 5);
    events.push([at, ...words.map((w) => run.events.words[w])]);
  }
  const plainWords = (t) => t.replaceAll('_', ' ');
  let eventLimit = MORE;

  // a number with a unit becomes an element that the unit switch finds
  function stateNode(text) {
    const m = SWITCHED.exec(text);
    if (m === null) return document.createTextNode(plainWords(text));
    const el = document.createElement('data');
    el.value = m[1];
    el.dataset.q = m[2] === '°C' ? 't' : 'cm2';
    el.dataset.d = el.dataset.e = m[2] === '°C' ? '1' : '2';
    return el;
  }

  function eventRow([at, what, from, to, reason]) {
    const row = document.createElement('tr');
    const when = document.createElement('th');
    when.scope = 'row';
    when.textContent = moment(run.start + at) + ':' + two(Math.floor(at) % 60);
    const deed = document.createElement('td');
    const name = plainWords(what);
    deed.append(name.charAt(0).toUpperCase() + name.slice(1) + ' ');
    if (from !== '' && what === 'shed level') deed.append('from ', stateNode(from), ' ');
    if (from !== '' && what === 'shed level') deed.append('to ');
    deed.append(stateNode(to));
    const why = document.createElement('td');
    why.textContent = reason;
    row.append(when, deed, why);
    return row;
  }

  function listEvents() {
    const kind = $('event-kind').value;
    const word = $('event-word').value.trim().toLowerCase();
    const fit = events.filter(
      (e) => (kind === '' || e[1] === kind) &&
        (word === '' || plainWords(e.slice(1).join(' ')).toLowerCase().includes(word)));
    $('event-rows').replaceChildren(...fit.slice(0, eventLimit).map(eventRow));
    writeNumbers($('event-rows'));
    $('event-count').textContent = fit.length > eventLimit
      ? 'First ' + eventLimit + ' of ' + fit.length : fit.length + ' listed';
    $('event-more').hidden = fit.length <= eventLimit;
  }

  if ($('event-list') !== null) {
    for (const kind of new Set(events.map((e) => e[1]))) {
      const name = plainWords(kind);
      $('event-kind').append(new Option(name, kind));
    }
    const again = () => {
      eventLimit = MORE;
      listEvents();
    };
    $('event-list').ontoggle = again;
    $('event-kind').onchange = again;
    $('event-word').oninput = again;
    $('event-more').onclick = () => {
      eventLimit += MORE;
      listEvents();
    };
  }

  // ---- units, dark and light, paper

  for (const input of all('input[name="units"]')) {
    input.checked = input.value === (us ? 'us' : 'metric');
    input.onchange = () => {
      us = input.value === 'us';
      root.dataset.units = input.value;
      writeNumbers(document);
      redraw();
    };
  }

  const wishesDark = matchMedia('(prefers-color-scheme: dark)');
  const isDark = () => (root.dataset.theme || (wishesDark.matches ? 'dark' : 'light')) === 'dark';
  function nameTheme() {
    $('theme').textContent = isDark() ? 'Light page' : 'Dark page';
  }
  $('theme').onclick = () => {
    root.dataset.theme = isDark() ? 'light' : 'dark';
    nameTheme();
    redraw();
  };
  wishesDark.onchange = () => {
    nameTheme();
    redraw();
  };
  nameTheme();

  const PAPER_PX = 660;
  addEventListener('beforeprint', () => {
    root.classList.add('paper');
    palette = {};
    for (const { u, plan } of charts) u.setSize({ width: PAPER_PX, height: plan.height * 0.85 });
    redraw();
  });
  addEventListener('afterprint', () => {
    root.classList.remove('paper');
    for (const { u, place, plan } of charts) {
      u.setSize({ width: place.clientWidth, height: plan.height });
    }
    redraw();
  });
})();
