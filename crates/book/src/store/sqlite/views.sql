-- Views over the JSON, for people who ask their own questions with any SQLite tool. They look two deep: an act whose
-- strike was itself struck stands again; what lies deeper is resolved by the program alone.

CREATE VIEW said AS
SELECT
  position,
  id,
  text ->> '$.kind' AS kind,
  text ->> '$.happened_at' AS happened_at,
  substr(text ->> '$.happened_at', 1, 10) AS day,
  text ->> '$.arrived_at' AS arrived_at,
  text ->> '$.who' AS who,
  text ->> '$.device' AS device,
  text ->> '$.with' AS part_of,
  text ->> '$.follows' AS follows,
  text ->> '$.why' AS why,
  text -> '$.body' AS body,
  lower(hex(link)) AS link
FROM entry;

CREATE VIEW struck AS
SELECT DISTINCT strike.follows AS id
FROM said AS strike
WHERE strike.kind = 'struck'
  AND NOT EXISTS (SELECT 1 FROM said AS back WHERE back.kind = 'struck' AND back.follows = strike.id);

-- Each act that stands: under the id of its first entry, with the words of its last correction.
CREATE VIEW act AS
WITH RECURSIVE line (root, id, depth) AS (
  SELECT id, id, 0 FROM said
  WHERE follows IS NULL AND kind <> 'struck' AND id NOT IN (SELECT id FROM struck)
  UNION ALL
  SELECT line.root, (
    SELECT max(next.id) FROM said AS next
    WHERE next.follows = line.id AND next.kind <> 'struck' AND next.id NOT IN (SELECT id FROM struck)
  ), depth + 1
  FROM line
  WHERE depth < 100 AND EXISTS (
    SELECT 1 FROM said AS next
    WHERE next.follows = line.id AND next.kind <> 'struck' AND next.id NOT IN (SELECT id FROM struck)
  )
)
SELECT line.root AS id, said.kind, said.happened_at, said.day, said.who, said.device, said.body
FROM line JOIN said ON said.id = line.id
WHERE NOT EXISTS (SELECT 1 FROM line AS later WHERE later.root = line.root AND later.depth > line.depth);

CREATE VIEW basket AS
SELECT id, day, body ->> '$.name' AS name, body ->> '$.produce' AS produce, body ->> '$.origin' AS origin,
  coalesce(body ->> '$.weight.gross.gross_mg' - body ->> '$.weight.gross.tare_mg', body ->> '$.weight.net.mg') AS net_mg,
  body ->> '$.weight.net.count' AS pieces
FROM act WHERE kind = 'basket-taken-in';

CREATE VIEW lot AS
SELECT id, day, body ->> '$.label' AS label, body ->> '$.name' AS name, body ->> '$.put_up' AS put_up,
  body ->> '$.told' AS told, body ->> '$.formula' AS formula, body ->> '$.batch' AS batch,
  (SELECT sum(put.value ->> '$.count') FROM json_each(body, '$.containers') AS put) AS containers
FROM act WHERE kind = 'lot-put-up';

CREATE VIEW drawn AS
SELECT id, day, who, body ->> '$.lot' AS lot, body ->> '$.at.size' AS size, body ->> '$.at.shelf' AS shelf,
  body ->> '$.count' AS containers, body -> '$.went' AS went
FROM act WHERE kind = 'drawn';

CREATE VIEW lost AS
SELECT id, day, who, body ->> '$.lot' AS lot, body ->> '$.at.size' AS size, body ->> '$.at.shelf' AS shelf,
  body ->> '$.count' AS containers, body ->> '$.reason' AS reason
FROM act WHERE kind = 'containers-lost';
