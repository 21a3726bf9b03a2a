/* Reading a point of the panel. */
(function () {
  'use strict';
  const { data, panel, map, byNumber, indexAt, elevationAt, finishedAt, fixed, get } = window.plyscape;
  const stage = get('stage');
  const readout = get('readout');
  function panelPoint(event) {
    const box = stage.querySelector('img').getBoundingClientRect();
    return [(event.clientX - box.left) / box.width * panel.width, (1 - (event.clientY - box.top) / box.height) * panel.height];
  }
  /* Why this ply: the zone or the ground, and what was drawn where a neighbour was given the place. */
  function why(x, y, i, number, ply, add) {
    const zone = map.zone[i] ? data.zones[map.zone[i] - 1] : null;
    const drawn = map.drawnPly[i] ? byNumber.get(map.drawnPly[i]) : null;
    const band = zone || drawn ? null : ply.band;
    let z = elevationAt(x, y);
    /* Cells are coarse: at a band's edge they mustn't contradict it. */
    if (band) z = Math.min(Math.max(z, band[0]), band[1]);
    add('Zone', zone || 'terrain');
    add('Why', (zone ? 'zone over ground of ' : 'ground ') + fixed(z, 0) + ' m'
      + (band ? ', band ' + fixed(band[0], 1) + ' to ' + fixed(band[1], 1) : ''));
    if (drawn) add('Drawn', drawn.number + ' ' + drawn.name + ', too small or narrow there: shows its neighbour\u2019s ply');
  }
  function show(x, y) {
    const i = indexAt(x, y);
    if (i < 0) return;
    const number = map.ply[i];
    const rows = [];
    const add = (name, value) => rows.push([name, value]);
    const ply = byNumber.get(number === 0 ? 1 : number);
    add('Ply', number === 0 ? ply.name + ' (border, left uncut)' : number + ' ' + ply.name);
    add('Finished face', fixed(finishedAt(x, y, number), 3) + ' mm deep');
    if (number > 0) {
      add('Cut to', ply.target > 0 ? fixed(finishedAt(x, y, number) - ply.finished + ply.target, 3) + ' mm' : 'uncut');
      add('Clearance', fixed(ply.available, 3) + ' mm, needed ' + fixed(ply.needed, 3));
      add('Wrong colour', ply.risk === 0 ? 'none (left uncut)' : ply.chance);
      why(x, y, i, number, ply, add);
    }
    add('Panel', 'X ' + fixed(x, 1) + '  Y ' + fixed(y, 1) + ' mm');
    const g = data.ground;
    const c = panel.carved;
    if (number > 0) {
      let east = g.box[0] + (x - c[0]) / (c[2] - c[0]) * (g.box[2] - g.box[0]);
      let north = g.box[1] + (y - c[1]) / (c[3] - c[1]) * (g.box[3] - g.box[1]);
      if (g.turn) {
        const a = -g.turn[0] * Math.PI / 180;
        const de = east - g.turn[1];
        const dn = north - g.turn[2];
        east = g.turn[1] + de * Math.cos(a) - dn * Math.sin(a);
        north = g.turn[2] + de * Math.sin(a) + dn * Math.cos(a);
      }
      add('Ground', fixed(east, 0) + ', ' + fixed(north, 0) + (g.crs ? ' (' + g.crs + ')' : ''));
    }
    const list = document.createElement('dl');
    rows.forEach(([name, value], k) => {
      const dt = document.createElement('dt');
      const dd = document.createElement('dd');
      dt.textContent = name;
      if (k === 0) {
        const swatch = document.createElement('span');
        swatch.className = 'swatch';
        swatch.style.background = ply.colour;
        swatch.textContent = '\u00a0';
        dd.append(swatch);
      }
      dd.append(value);
      list.append(dt, dd);
    });
    readout.replaceChildren(list);
  }
  stage.addEventListener('pointermove', (event) => show(...panelPoint(event)));
  stage.addEventListener('pointerdown', (event) => show(...panelPoint(event)));
  show((panel.carved[0] + panel.carved[2]) / 2, (panel.carved[1] + panel.carved[3]) / 2);
  window.plyscape.panelPoint = panelPoint;
})();
