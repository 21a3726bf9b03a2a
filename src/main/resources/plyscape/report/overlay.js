/* What lies over the picture of the panel: layers switched off, risk, zones, patterns, numbers. */
(function () {
  'use strict';
  const { data, map, byNumber, rgb, inkOn, get } = window.plyscape;
  function riskColour(risk) {
    return rgb(data.risks.find((step) => risk <= step.most).colour);
  }

  const overlay = get('overlay');
  const on = new Map(data.plies.map((p) => [p.number, true]));
  overlay.width = map.columns;
  overlay.height = map.rows;

  /* Zones take Okabe and Ito's colours, which colour-blind readers can tell apart. */
  const palette = [[230, 159, 0], [0, 158, 115], [86, 180, 233], [0, 114, 178], [90, 90, 90], [213, 94, 0], [204, 121, 167], [240, 228, 66]];

  /* One hatch a ply, so that neighbours differ without colour. */
  function hatched(number, column, row) {
    const kind = (number - 1) % 8;
    const x = column % 14, y = row % 14;
    switch (kind) {
      case 0: return false;
      case 1: return (column + row) % 14 < 2;
      case 2: return y < 2;
      case 3: return (column - row + 14000) % 14 < 2;
      case 4: return x < 2;
      case 5: return x < 3 && y < 3;
      case 6: return x < 2 || y < 2;
      default: return (column + row) % 14 < 2 || (column - row + 14000) % 14 < 2;
    }
  }

  function drawOverlay() {
    const context = overlay.getContext('2d');
    const image = context.createImageData(map.columns, map.rows);
    const mode = document.querySelector('input[name=mode]:checked').value;
    const pattern = get('patterns').checked;
    const tones = data.zones.map((_, i) => palette[i % palette.length]);
    const inks = new Map(data.plies.map((p) => [p.number, inkOn(p.colour) === '#000' ? 0 : 255]));
    for (let i = 0; i < map.ply.length; i++) {
      const number = map.ply[i];
      let colour = null, alpha = 0;
      if (number > 0 && !on.get(number)) {
        colour = [250, 248, 244];
        alpha = 235;
      } else if (mode === 'risk') {
        colour = number === 0 ? [200, 200, 200] : riskColour(byNumber.get(number).risk);
        alpha = 225;
      } else if (mode === 'zones') {
        colour = map.zone[i] ? tones[map.zone[i] - 1] : [245, 245, 245];
        alpha = map.zone[i] ? 215 : 170;
      }
      if (pattern && number > 0 && on.get(number)) {
        const column = i % map.columns;
        if (hatched(number, column, (i - column) / map.columns)) {
          const ink = mode === 'colours' ? inks.get(number) : 0;
          colour = colour ? colour.map((v) => (v + ink) / 2) : [ink, ink, ink];
          alpha = Math.max(alpha, 105);
        }
      }
      if (colour) {
        image.data[4 * i] = colour[0];
        image.data[4 * i + 1] = colour[1];
        image.data[4 * i + 2] = colour[2];
        image.data[4 * i + 3] = alpha;
      }
    }
    context.putImageData(image, 0, 0);
    get('labels').style.display = get('numbers').checked ? '' : 'none';
    get('risk-key').hidden = mode !== 'risk';
    get('zone-key').hidden = mode !== 'zones';
    document.querySelectorAll('#zone-key .swatch').forEach((s, i) => {
      s.style.background = 'rgb(' + tones[i].join(',') + ')';
    });
  }

  document.querySelectorAll('.layer').forEach((box) => box.addEventListener('change', () => {
    on.set(Number(box.value), box.checked);
    drawOverlay();
  }));
  document.querySelectorAll('input[name=mode], #patterns, #numbers').forEach((e) => e.addEventListener('change', drawOverlay));
  const weak = get('weak');
  if (weak) {
    weak.addEventListener('change', () => {
      get('weak-marks').style.display = weak.checked ? '' : 'none';
    });
  }
  get('all-on').addEventListener('click', () => setAll(true));
  get('all-off').addEventListener('click', () => setAll(false));
  function setAll(value) {
    document.querySelectorAll('.layer').forEach((box) => {
      box.checked = value;
      on.set(Number(box.value), value);
    });
    drawOverlay();
  }
  drawOverlay();
})();
