/*
 * Draws the solid without WebGL, from the cells of the map, in parallel projection: every column of pixels is walked from the front
 * to the back, and what lies behind something higher on the picture is hidden. plyscape.solidFlat(canvas) gives a drawing function.
 */
(function () {
  'use strict';
  const { data, panel, map, rgb, depthOfCell, solidLight } = window.plyscape;

  window.plyscape.solidFlat = function (canvas) {
    const context = canvas.getContext('2d');
    const steps = 1024;
    const strip = [];
    for (let i = 0; i < steps; i++) {
      const depth = (i + 0.5) / steps * panel.thickness;
      const ply = data.plies.find((p) => depth >= p.top && depth < p.bottom);
      strip.push(ply ? rgb(ply.colour) : [58, 47, 38]);
    }
    const colourAt = (depth) => strip[Math.min(steps - 1, Math.max(0, Math.floor(depth / panel.thickness * steps)))];
    let shine = null, litFor = 0;
    canvas.dataset.cells = String(map.columns * map.rows);

    return function draw(camera, paper) {
      if (litFor !== camera.stretch) {
        litFor = camera.stretch;
        shine = solidLight(litFor).light;
      }
      const w = canvas.width, h = canvas.height;
      const image = context.createImageData(w, h);
      for (let i = 0; i < image.data.length; i += 4) {
        image.data[i] = paper[0];
        image.data[i + 1] = paper[1];
        image.data[i + 2] = paper[2];
        image.data[i + 3] = 255;
      }
      const { right, up, centre, distance, stretch } = camera;
      const perMm = w / (2 * camera.wide * distance);
      /* On the ground: u across the picture, v away from the eye. */
      const across = [right[0], right[1]], away = [-right[1], right[0]];
      const sin = up[0] * away[0] + up[1] * away[1], cos = up[2] * stretch;
      const reach = Math.hypot(panel.width, panel.height) / 2;
      const step = Math.min(map.mm, 0.7 / perMm / Math.max(sin, 0.2));
      for (let px = 0; px < w; px++) {
        const u = (px + 0.5 - w / 2) / perMm + centre[0];
        let drawn = null;
        for (let v = -reach; v <= reach; v += step) {
          const x = panel.width / 2 + u * across[0] + v * away[0], y = panel.height / 2 + u * across[1] + v * away[1];
          if (x < 0 || y < 0 || x >= panel.width || y >= panel.height) {
            if (drawn === null) continue;
            break;
          }
          const cell = Math.floor((panel.height - y) / map.mm) * map.columns + Math.floor(x / map.mm);
          const depth = depthOfCell(cell);
          const level = (d) => (v * sin + (panel.thickness / 2 - d) * cos - centre[1]) * perMm + h / 2;
          const side = drawn === null;
          if (side) drawn = level(panel.thickness);
          const top = level(depth), face = level(depth) - 1.5;
          if (top <= drawn) continue;
          const lit = (0.62 * shine[3 * cell + 1] + 0.38 * shine[3 * cell]) / 255;
          for (let p = Math.max(0, Math.ceil(drawn)); p <= Math.min(h - 1, top); p++) {
            const wall = p < face || side;
            const colour = colourAt(wall ? depth + (top - p) / perMm / Math.max(cos, 1e-6) : depth);
            const light = wall ? 0.72 : lit;
            const i = 4 * ((h - 1 - p) * w + px);
            image.data[i] = colour[0] * light;
            image.data[i + 1] = colour[1] * light;
            image.data[i + 2] = colour[2] * light;
          }
          drawn = top;
        }
      }
      context.putImageData(image, 0, 0);
    };
  };
})();
