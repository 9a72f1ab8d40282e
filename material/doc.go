package material
