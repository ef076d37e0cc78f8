package notices

// spares are requests and flyers for a home that nobody listed; its language is unknown, so there is a face in each.
func spares(job Job) []Sheet {
	if len(job.openOutside()) == 0 {
		return nil
	}
	copies := int(job.rule(Spares).Value)
	spareRequest := request(job, To{}, nil, copies, requestContent(job, nil, ""))
	spareFlyer := petFlyer(job, To{}, nil, nil, copies)
	return []Sheet{spareRequest, spareFlyer}
}
