(() => {
  'use strict';
  const body = document.querySelector('tbody');
  const rows = Array.from(body.rows);
  const search = document.getElementById('search');
  const shown = document.getElementById('shown');

  const show = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    rows.forEach((row) => {
      const text = row.textContent.toLowerCase();
      row.hidden = !words.every((word) => text.includes(word));
      count += row.hidden ? 0 : 1;
    });
    shown.textContent = words.length ? `${count} of ${rows.length}` : '';
  };

  const key = (row, column) => {
    const cell = row.cells[column];
    return 'value' in cell.dataset ? Number(cell.dataset.value) : cell.textContent;
  };

  const heads = Array.from(document.querySelectorAll('thead th'));
  heads.forEach((head, column) => {
    const button = head.querySelector('button');
    if (!button) return;
    button.addEventListener('click', () => {
      const down = head.getAttribute('aria-sort') === 'ascending';
      heads.forEach((other) => other.hasAttribute('aria-sort') && other.setAttribute('aria-sort', 'none'));
      head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
      rows.slice().sort((a, b) => {
        const x = key(a, column), y = key(b, column);
        const order = typeof x === 'number' ? x - y : x.localeCompare(y, 'en', {numeric: true});
        return down ? -order : order;
      }).forEach((row) => body.append(row));
    });
  });
  search.addEventListener('input', show);
})();
