package revolution

// ring adds the energy of a ring with n waves, its section rigid and normal to
// its line, and that of its force N: with c its centroid,
//
//	E A ((u_c + n v_c)/r_c)² r_c + E I_r ((n v_c + n² u_c)/r_c²)² r_c
//	+ E I_z ((β + n² z_c/r_c)/r_c)² r_c + G J (n (β + z_c/r_c)/r_c)² r_c
//	+ N [((n u_c + v_c)/r_c)² + (n z_c/r_c)²] r_c
//
// v_c = v + (d_r v + n (d_r u_r + d_z u_z))/r, u_c = u_r + d_z β, z_c = u_z − d_r β.
//
// Source: curved bar without shear deformation (memory); rigid motions give nothing.
func (w *waves) ring(g Ring, n, force float64, elastic bool, b *band) {
	r := w.m.s.node(g.Node).R
	dr, dz := g.Offset.R, g.Offset.Z
	rc := r + dr
	u := [4]float64{1, 0, dz, 0}
	z := [4]float64{0, 1, -dr, 0}
	v := [4]float64{n * dr / r, n * dz / r, 0, 1 + dr/r}
	if n == 0 {
		v = [4]float64{}
	}
	var parts [6][4]float64
	for i := range u {
		turn := 0.0
		if i == 2 {
			turn = 1
		}
		parts[0][i] = (u[i] + n*v[i]) / rc
		parts[1][i] = (n*v[i] + n*n*u[i]) / (rc * rc)
		parts[2][i] = (turn + n*n*z[i]/rc) / rc
		parts[3][i] = n * (turn + z[i]/rc) / rc
		parts[4][i], parts[5][i] = (n*u[i]+v[i])/rc, n*z[i]/rc
	}
	stiff := [6]float64{4: force, 5: force}
	if elastic {
		shear := g.Modulus / (2 * (1 + g.Poisson))
		stiff = [6]float64{g.Modulus * g.Area, g.Modulus * g.Radial, g.Modulus * g.Axial, shear * g.Torsion, force, force}
	}
	for k, c := range stiff {
		for i := range u {
			for j := i; j < len(u); j++ {
				b.a[(w.nodes[g.Node]+i)*waveStride+j-i] += c * rc * parts[k][i] * parts[k][j]
			}
		}
	}
}
